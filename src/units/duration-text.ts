import { decimalText, nearest } from "./rounding.ts";

const SECOND = 1_000n;
const MINUTE = 60_000n;
const HOUR = 3_600_000n;
const DAY = 86_400_000n;
/** Up to here hours are written as hours: cure and standing times are spoken of as 24, 36, 48 h. Own choice. */
const DAYS_FROM = 72n * HOUR;

interface Grain {
  readonly below: bigint;
  readonly large: readonly [bigint, string];
  readonly small: readonly [bigint, string];
}
const grains: readonly Grain[] = [
  { below: HOUR, large: [MINUTE, "min"], small: [SECOND, "s"] },
  { below: DAYS_FROM, large: [HOUR, "h"], small: [MINUTE, "min"] },
];
const coarsest = { large: [DAY, "d"], small: [HOUR, "h"] } as const;

/** Milliseconds as `45 s`, `30 min`, `2 h 15 min`, `36 h`, `4 d 6 h`: two parts at most, rounded once to the smaller, half away from zero. */
export function durationText(milliseconds: bigint): string {
  const magnitude = milliseconds < 0n ? -milliseconds : milliseconds;
  const text = magnitudeText(magnitude);
  return milliseconds < 0n && text !== "0 s" ? `-${text}` : text;
}

function magnitudeText(magnitude: bigint): string {
  if (nearest(magnitude, 100n) < 600n) return `${decimalText(magnitude, SECOND, 1)} s`;
  // A value that rounds up to the bound belongs to the next grain: 59 min 59.7 s is 1 h, not 60 min.
  const { large, small } = grains.find((grain) => nearest(magnitude, grain.small[0]) * grain.small[0] < grain.below) ?? coarsest;
  const rounded = nearest(magnitude, small[0]) * small[0];
  const largePart = rounded / large[0];
  const smallPart = (rounded % large[0]) / small[0];
  return smallPart === 0n ? `${largePart} ${large[1]}` : `${largePart} ${large[1]} ${smallPart} ${small[1]}`;
}
