import fc from "fast-check";
import { expect, it } from "vitest";
import { jobState, photoComparisons, photoMeasured, type Whats } from "#core/job/index.ts";
import { readWhat } from "#core/wire/index.ts";
import { damagedValue } from "../../helpers/damage.ts";
import { fuzz, patience, RUNS } from "../../helpers/fuzz.ts";
import { bench, book, lengthItem, type What } from "../../helpers/job.ts";
import { measuredWords } from "../../helpers/photo-measured.ts";

/** Corners and taps that a card really gave, and numbers that no card gives. */
const whole = measuredWords();
const numbers = [0, 1, -1, 1999, 100_000, -100_000_000, 100_000_000, 1_000_000, 2 ** 31, 0.5];
const moved = fc
  .tuple(fc.nat(3), fc.nat(3), fc.nat(2), fc.constantFrom(...numbers), fc.boolean())
  .map(([code, corner, axis, value, isAdded]) => {
    const what = structuredClone(whole) as unknown as { codes: { corners: number[][] }[] };
    const spot = what.codes[code]?.corners[corner] ?? [];
    spot[axis] = isAdded ? (spot[axis] ?? 0) + value : value;
    return what;
  });
type Whole = Whats["photo-measured"];
/** Of the right shape, and no length all the same: both ends on one spot, corners in one line, no code, another ruler. */
const noLength = fc.constantFrom<(what: Whole) => Whole>(
  (what) => ({ ...what, to: what.from }),
  (what) => ({ ...what, codes: what.codes.map((code) => ({ ...code, corners: code.corners.map(([x, , u]) => [x, 0, u]) as never })) }),
  (what) => ({ ...what, ruler: { typed: "24", unit: "in" } }),
  (what) => ({ ...what, ruler: { typed: "ten", unit: "in" } }),
);
const none = noLength.map((spoil) => spoil(whole as unknown as Whole));
const sheet = bench({ items: [lengthItem("the-length", { onOnePlane: true })] });

function comparedWith(what: unknown): void {
  const b = book(sheet);
  b.read("the-length", "20 0/16");
  b.enter("photo-measured", what as What);
  for (const one of photoComparisons(jobState(b.ledger()), "all"))
    for (const length of [one.tape, one.measured])
      if (length !== undefined) expect([length.value, length.doubt].every(Number.isSafeInteger)).toBe(true);
}

it(
  "a length in a photo, of any corners and taps: finite with its doubt, or refused; and the job is compared all the same",
  () =>
    fuzz<unknown>({
      kind: "lengths in photos",
      // each of them is dozens of fits
      runs: RUNS / 8,
      inputs: fc.oneof(moved, none, damagedValue([whole], 2, numbers)),
      read: (what) => {
        const shaped = readWhat("photo-measured", what as never, "what");
        if (!shaped.ok) {
          // what an older program let in stands in the ledger all the same
          comparedWith(what);
          return shaped.refusal;
        }
        const found = photoMeasured(what as Whats["photo-measured"]);
        if (!found.ok) return found.refusal;
        const { micrometres, doubt } = found.value.length;
        expect(micrometres).toBeGreaterThanOrEqual(0);
        expect(doubt).toBeGreaterThan(0);
        return "taken";
      },
    }),
  patience(200),
);
