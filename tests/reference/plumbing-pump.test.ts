import { describe, test } from "vitest";
import { certain } from "#core/doubt/index.ts";
import {
  gallonsPerMinute,
  type OperatingPoint,
  operatingPoint,
  type PumpPoint,
  pipeVelocity,
  pumpCurve,
  pumpHead,
  type SystemCurve,
  toGallonsPerMinute,
} from "#core/plumbing/index.ts";
import { feet, inches, metres, toInches } from "#core/units/index.ts";
import { between, byHand, published, source } from "./checked.ts";

const toFeet = (length: number): number => toInches(metres(length)) / 12;
const card = [0, 10, 20, 30, 40, 50, 60, 70, 77].map((q): PumpPoint => ({ flow: gallonsPerMinute(q), head: feet(24 - 0.004 * q * q) }));

function pointOn(points: readonly PumpPoint[], system: SystemCurve, tolerance = { head: 0, flow: 0 }): OperatingPoint {
  const curve = pumpCurve(points, tolerance);
  if (!curve.ok) throw new Error(curve.refusal.code);
  const found = operatingPoint(curve.value, system);
  if (!found.ok) throw new Error(found.refusal.code);
  if (found.value.kind !== "one point") throw new Error(found.value.kind);
  return found.value.point;
}

describe("operating point, pump H = 24 − 0.004 q² ft (worked out in closed form, no publication)", () => {
  test("system H = 6 + 0.001 q²: q = √((24 − 6)/0.005) = 60.0 gpm, H = 9.6 ft", () => {
    const { flow, head } = pointOn(card, {
      staticHead: certain(feet(6)),
      sections: [],
      knownLosses: [{ head: certain(feet(0.001 * 3600)), flow: gallonsPerMinute(60) }],
    });
    const closed = byHand("pump 24 − 0.004 q² ft, system 6 + 0.001 q² ft: q = √(18/0.005)");
    published(closed, "gpm", toGallonsPerMinute(flow.value), 60, { digits: 8 });
    published(closed, "ft of head", toFeet(head.value), 9.6, { digits: 8 });
  });

  test("static head 6 ft and 60 ft of 2.067 in, C 150: 60.367 gpm, 9.4235 ft, 5.772 ft/s", () => {
    const bore = certain(inches(2.067));
    const { flow, head } = pointOn(card, {
      staticHead: certain(feet(6)),
      sections: [{ length: certain(feet(60)), bore, coefficient: certain(150) }],
    });
    const root = byHand("pump 24 − 0.004 q² ft, 6 ft and 60 ft of 2.067 in by Hazen-Williams 0.2083, C 150");
    published(root, "gpm", toGallonsPerMinute(flow.value), 60.367, { digits: 3 });
    published(root, "ft of head", toFeet(head.value), 9.4235, { digits: 4 });
    const speed = pipeVelocity(flow, bore);
    published(root, "ft/s", speed.ok ? toFeet(speed.value.velocity.value) : Number.NaN, 5.772, { digits: 3 });
  });
});

/** Titration data of Fritsch and Carlson's paper of 1980 (from memory): a steep rise between two flats, turned over to fall. */
describe("monotone interpolation on Fritsch and Carlson's own data (from memory)", () => {
  const x = [7.99, 8.09, 8.19, 8.7, 9.2, 10, 12, 15, 20];
  const y = [0, 2.76429e-5, 4.37498e-2, 0.169183, 0.469428, 0.94374, 0.998636, 0.999919, 0.999994];
  const curve = pumpCurve(x.map((flow, i) => ({ flow, head: 1 - (y[i] ?? 0) })));
  test("no dip and no bump anywhere, where a plain spline has both", () => {
    if (!curve.ok) throw new Error(curve.refusal.code);
    const data = source("Fritsch and Carlson, Monotone piecewise cubic interpolation (1980)", "their titration data", "from memory");
    let [before, highest] = [1, 0];
    for (let i = 0; i <= 2000; i++) {
      const head = pumpHead(curve.value, i === 2000 ? 20 : 7.99 + ((20 - 7.99) * i) / 2000);
      if (!head.ok) throw new Error(head.refusal.code);
      highest = Math.max(highest, head.value.value - before);
      before = head.value.value;
    }
    between(data, "largest rise where the data fall", highest, 0, 1e-15);
    published(data, "last value", before, 1 - 0.999994, { digits: 12 });
  });
});
