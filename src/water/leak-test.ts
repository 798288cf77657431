import { certain, combine, faultIn, product, quotient, refused, scale, subtract, type Uncertain } from "../doubt/index.ts";
import { type Outcome, ok } from "../outcome/index.ts";
import { SECONDS_PER_DAY } from "./factors.ts";

/**
 * Water lost in a standing test, less what a control bucket beside it lost.
 *
 *   L = (a Δ - A Δ_b) / T          without a bucket:  L = a Δ / T - A e
 *
 *   L    loss a day, m³ (`lossPerDay`)
 *   a    water per depth of the basin, m³ per m (`perDepth`)
 *   Δ    how far the water went down, read from one mark on the rim, m (`level`)
 *   Δ_b  how far it went down in the bucket, m; the bucket stands in the basin's water or its shade
 *   A    open water that evaporates, m² (`evaporatingArea`; absent: a, the basin's own). Running: falls and pools with it
 *   e    evaporation a day, m, from the weather, with its larger doubt
 *   T    days between the readings (`duration` in seconds)
 *
 * Range: a steady loss; make-up shut, no rain, the pump off or running throughout. `basin, pump off` and `running` are two tests:
 * what only the second loses leaves by falls and edges, splash among it, which no bucket sees. Source: common practice.
 * Expected accuracy: 1/16 in on 20 ft² of water over 24 h is about 0.8 gal a day.
 */
export type LeakTestKind = "basin, pump off" | "running";

export interface LevelReadings {
  /** Down from the mark to the water, m, in the order of time. */
  readonly first: Uncertain;
  readonly last: Uncertain;
}

export type Evaporated =
  | { readonly by: "control bucket"; readonly level: LevelReadings }
  | { readonly by: "weather"; readonly depthPerDay: Uncertain };

export interface LeakConditions {
  readonly makeUpShut?: boolean;
  readonly rain?: boolean;
  readonly pump?: "off" | "ran" | "ran in part";
}

export interface LeakTest {
  readonly kind: LeakTestKind;
  readonly level: LevelReadings;
  readonly duration: Uncertain;
  readonly perDepth: Uncertain;
  readonly evaporatingArea?: Uncertain;
  readonly evaporated: Evaporated;
  readonly conditions: LeakConditions;
}

export type LeakTestFault =
  | "make-up not shut"
  | "make-up not stated"
  | "rain"
  | "rain not stated"
  | "pump not off"
  | "pump not running"
  | "pump not stated";

/** Why a test does not count; none: it does. */
export function leakTestFaults(kind: LeakTestKind, { makeUpShut, rain, pump }: LeakConditions): readonly LeakTestFault[] {
  const faults: LeakTestFault[] = [];
  if (makeUpShut !== true) faults.push(makeUpShut === false ? "make-up not shut" : "make-up not stated");
  if (rain !== false) faults.push(rain === true ? "rain" : "rain not stated");
  const wanted = kind === "running" ? "ran" : "off";
  if (pump !== wanted) faults.push(pump === undefined ? "pump not stated" : kind === "running" ? "pump not running" : "pump not off");
  return faults;
}

export interface LeakLoss {
  readonly answer: "counts";
  readonly kind: LeakTestKind;
  /** Loss a day without what evaporated, m³; negative: the basin gained. */
  readonly lossPerDay: Uncertain;
  /** What evaporated, m³ a day. */
  readonly evaporatedPerDay: Uncertain;
  /** Between the readings, seconds. */
  readonly seconds: number;
  /** The doubt that a longer test makes smaller in step: tape, mark and clock. The rest of it stays. */
  readonly fading: Uncertain;
}
export type LeakTestAnswer = LeakLoss | { readonly answer: "does not count"; readonly faults: readonly LeakTestFault[] };

const dropOf = ({ first, last }: LevelReadings): Uncertain => subtract(last, first);

/** The loss of one test, or why it does not count. Only + − × ÷. Refuses figures that are no numbers, no time between the readings. */
export function leakTest(test: LeakTest): Outcome<LeakTestAnswer> {
  const { kind, level, duration, perDepth, evaporatingArea = perDepth, evaporated, conditions } = test;
  const bucket = evaporated.by === "control bucket" ? evaporated.level : undefined;
  const fault =
    faultIn("leakTest", {
      first: [level.first, "finite"],
      last: [level.last, "finite"],
      duration: [duration, "positive"],
      perDepth: [perDepth, "positive"],
      evaporatingArea: [evaporatingArea, "not negative"],
    }) ??
    (evaporated.by === "control bucket"
      ? faultIn("bucket", { first: [evaporated.level.first, "finite"], last: [evaporated.level.last, "finite"] })
      : faultIn("weather", { evaporationPerDay: [evaporated.depthPerDay, "finite"] }));
  if (fault) return refused(fault);
  const faults = leakTestFaults(kind, conditions);
  if (faults.length > 0) return ok({ answer: "does not count", faults });

  const days = scale(duration, 1 / SECONDS_PER_DAY);
  const drop = dropOf(level);
  const bucketDrop = bucket === undefined ? certain(0) : dropOf(bucket);
  const bucketVolume = product(evaporatingArea, bucketDrop);
  const volume = subtract(product(perDepth, drop), bucketVolume);
  const evaporatedPerDay = evaporated.by === "weather" ? product(evaporatingArea, evaporated.depthPerDay) : quotient(bucketVolume, days);
  const rate = quotient(volume, days);
  const lossPerDay = evaporated.by === "weather" ? subtract(rate, evaporatedPerDay) : rate;
  const fromReadings = combine([
    { times: perDepth.value, of: drop },
    { times: -evaporatingArea.value, of: bucketDrop },
  ]);
  const fading = quotient({ value: volume.value, parts: fromReadings.parts }, days);
  return ok({ answer: "counts", kind, lossPerDay, evaporatedPerDay, seconds: duration.value, fading });
}

/** What falls and edges lose beyond the basin itself, m³ a day: the running test less the one with the pump off. */
export const lostByFallsAndEdges = (running: LeakLoss, pumpOff: LeakLoss): Uncertain => subtract(running.lossPerDay, pumpOff.lossPerDay);
