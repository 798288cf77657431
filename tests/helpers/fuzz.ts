import fc from "fast-check";
import { expect } from "vitest";
import { type Refusal, refusalCodes } from "#core/outcome/index.ts";
import { ran } from "../long/ran.ts";

// FUZZ_RUNS=100000 FUZZ_SEED=7 npx vitest run --project unit tests/unit/fuzz: the long form; `npm run long` has it too.
export const RUNS = Number(process.env.FUZZ_RUNS ?? 2_000);
export const SEED = Number(process.env.FUZZ_SEED ?? 20_251_128);
/** Of one input; a reader that takes longer hangs. A slow machine's pause is no hang. */
const LONGEST_MS = 2_000;
/** Of a place or a code that a refusal names: what was sent must not come back as a flood. */
const LONGEST_PLACE = 4_000;

/** For a test's own limit. */
export const patience = (msEach: number): number => 60_000 + RUNS * msEach;

export interface Fuzz<T> {
  readonly kind: string;
  readonly inputs: fc.Arbitrary<T>;
  /** Reads one input: taken, or what it was refused with. */
  readonly read: (input: T) => "taken" | Refusal | Promise<"taken" | Refusal>;
  /** Of all runs, the share that at least must be taken, and refused: damage of one kind only tries nothing. */
  readonly least?: { readonly taken: number; readonly refused: number };
  readonly runs?: number;
}

const codes: ReadonlySet<string> = new Set(refusalCodes);

/** What every refusal has, whatever was sent: a known code, a place, figures that are numbers or texts. */
export function expectRefusal({ code, place, column, figures }: Refusal): void {
  expect(codes.has(code), code).toBe(true);
  expect(typeof place).toBe("string");
  expect(place.length, place.slice(0, 200)).toBeLessThanOrEqual(LONGEST_PLACE);
  if (column !== undefined) expect(column).toBeGreaterThanOrEqual(1);
  for (const [name, figure] of Object.entries(figures))
    if (typeof figure === "number") expect(Number.isFinite(figure), `${code} ${name}`).toBe(true);
    else expect(typeof figure, `${code} ${name}`).toBe("string");
}

/** Runs the property, which `npm run long` does not cut short, and prints what came of it. */
export async function fuzz<T>({ kind, inputs, read, least = { taken: 0.02, refused: 0.02 }, runs = RUNS }: Fuzz<T>): Promise<void> {
  const refused = new Map<string, number>();
  let [taken, longest] = [0, 0];
  const details = await fc.check(
    fc.asyncProperty(inputs, async (input) => {
      const before = performance.now();
      const told = await read(input);
      longest = Math.max(longest, performance.now() - before);
      if (told === "taken") taken += 1;
      else {
        expectRefusal(told);
        refused.set(told.code, (refused.get(told.code) ?? 0) + 1);
      }
    }),
    { numRuns: runs, seed: SEED },
  );
  ran(details.numRuns);
  if (details.failed)
    throw new Error(`${fc.defaultReportMessage(details) ?? kind}\n${String(details.errorInstance)}`, { cause: details.errorInstance });
  const no = [...refused.values()].reduce((sum, count) => sum + count, 0);
  const most = [...refused].sort(([, a], [, b]) => b - a).slice(0, 3);
  const often = most.map(([code, count]) => `${count} ${code}`).join(", ");
  console.info(
    `fuzz: ${runs} ${kind}, seed ${SEED}, ${taken} taken, ${no} refused with ${refused.size} codes (${often}), longest ${longest.toFixed(1)} ms`,
  );
  expect(longest).toBeLessThan(LONGEST_MS);
  expect(taken).toBeGreaterThanOrEqual(runs * least.taken);
  expect(no).toBeGreaterThanOrEqual(runs * least.refused);
}
