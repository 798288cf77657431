import { add, certain, magnitude, scale, subtract, type Uncertain, unfitAt } from "../doubt/index.ts";
import { type Outcome, ok, refuse } from "../outcome/index.ts";
import { inches } from "../units/index.ts";
import { heightFromRod } from "./places.ts";
import type { SetOutHeight, SetOutPlace } from "./set-out-heights.ts";

/** What the rod is to read, metres. A rod reads more the lower it stands. */
export interface SetOutTarget {
  readonly place: SetOutPlace;
  readonly aim: Uncertain;
  /** The reading at the upper limit (the smallest) and at the lower limit (the largest). */
  readonly least?: Uncertain;
  readonly most?: Uncertain;
  readonly lowBy?: number;
  readonly highBy?: number;
}

export interface SetOut {
  readonly targets: readonly SetOutTarget[];
  /** Places whose height is given over finished grade, while the height mark's own height over it is not known. */
  readonly withoutGrade: readonly SetOutPlace[];
}

function faultOf({ place, aim, lowBy = 0, highBy = 0 }: SetOutHeight): Outcome<never> | undefined {
  if (![aim, lowBy, highBy].every(Number.isFinite)) return refuse("number-not-finite", `heights/${place}`);
  if (lowBy < 0 || highBy < 0) return refuse("number-not-positive", `heights/${place}`);
  return undefined;
}

/**
 * Rod readings to work to, from one reading on the height mark (of the set-up in use) and the design's heights. `markOverGrade`:
 * the mark's height over finished grade, metres, up positive; without it only heights over the mark itself come out, and the
 * others are named. The set-up's own doubts cancel when a reading of the same set-up is compared with its target.
 */
export function setOut(heights: readonly SetOutHeight[], markReading: Uncertain, markOverGrade?: Uncertain): Outcome<SetOut> {
  const bad = unfitAt("markReading", "finite", markReading) ?? (markOverGrade && unfitAt("markOverGrade", "finite", markOverGrade));
  if (bad) return bad;
  const targets: SetOutTarget[] = [];
  const withoutGrade: SetOutPlace[] = [];
  for (const height of heights) {
    const fault = faultOf(height);
    if (fault) return fault;
    const { place, over, lowBy, highBy } = height;
    const markOver = over === "height mark" ? certain(0) : markOverGrade;
    if (!markOver) {
      withoutGrade.push(place);
      continue;
    }
    const aim = add(markReading, subtract(markOver, certain(height.aim)));
    targets.push({
      place,
      aim,
      ...(highBy === undefined ? {} : { highBy, least: subtract(aim, certain(highBy)) }),
      ...(lowBy === undefined ? {} : { lowBy, most: add(aim, certain(lowBy)) }),
    });
  }
  return ok({ targets, withoutGrade });
}

export interface Correction {
  readonly move: "raise" | "lower" | "leave";
  /** How much, metres, not negative. */
  readonly by: Uncertain;
  /** Height of what is there over the aim, metres, negative when low: to compare with −lowBy … highBy. */
  readonly overAim: Uncertain;
}

/** Finest step that is asked for: what is nearer to the aim than half of it is left as it is. */
const STEP = inches(1 / 16);

/** What to do at a place whose rod reading is `reading` (same set-up as the height mark's), `step` metres being the finest move. */
export function correctionFor(target: SetOutTarget, reading: Uncertain, step: number = STEP): Outcome<Correction> {
  const place = `readings/${target.place}`;
  const bad = unfitAt(place, "finite", reading) ?? unfitAt(place, "finite", target.aim) ?? unfitAt("step", "not negative", step);
  if (bad) return bad;
  const overAim = subtract(heightFromRod(reading), scale(target.aim, -1));
  const by = magnitude(overAim);
  const move = by.value === 0 || by.value < step / 2 ? "leave" : overAim.value < 0 ? "raise" : "lower";
  return ok({ move, by, overAim });
}
