import { certain, rectangular, standardUncertainty, type Uncertain, withSource } from "#core/doubt/index.ts";
import type { Outcome } from "#core/outcome/index.ts";
import { gallonsPerMinute, type PipeSection, type PumpPoint, type SystemCurve, toGallonsPerMinute } from "#core/plumbing/index.ts";
import { feet, inches, metres, toInches } from "#core/units/index.ts";

export const answer = <T>(outcome: Outcome<T>): T => {
  if (!outcome.ok) throw new Error(`${outcome.refusal.code} at ${outcome.refusal.place}`);
  return outcome.value;
};
export const codeOf = (outcome: Outcome<unknown>): string => (outcome.ok ? "ok" : outcome.refusal.code);

export const toFeet = (length: number): number => toInches(metres(length)) / 12;
export const gpm = (n: number): Uncertain => certain(gallonsPerMinute(n));
export const asGpm = (flow: Uncertain): number => toGallonsPerMinute(flow.value);

/** A value with one source of its own, given by its half-width. */
export const doubted = (value: number, source: string, halfWidth: number): Uncertain =>
  withSource(certain(value), source, rectangular(halfWidth));

export const section = (lengthFeet: number, boreInches: number, coefficient = 150): PipeSection => ({
  length: certain(feet(lengthFeet)),
  bore: certain(inches(boreInches)),
  coefficient: certain(coefficient),
});

/** Points of H = H0 − a q², gpm and feet, every `step` gpm and at run-out. */
export const parabola = (shutOff: number, a: number, step = 10): PumpPoint[] => {
  const runOut = Math.sqrt(shutOff / a);
  const flows = [...Array.from({ length: Math.ceil(runOut / step) }, (_, i) => i * step), runOut];
  return flows.map((q) => ({ flow: gallonsPerMinute(q), head: feet(Math.max(0, shutOff - a * q ** 2)) }));
};

export const points = (...list: readonly (readonly [number, number])[]): PumpPoint[] =>
  list.map(([flow, head]) => ({ flow: gallonsPerMinute(flow), head: feet(head) }));

export const system = (staticFeet: number, ...sections: readonly PipeSection[]): SystemCurve => ({
  staticHead: certain(feet(staticFeet)),
  sections,
});

export const NOT_NUMBERS = [Number.NaN, Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY] as const;

/** The standard uncertainty that one source brings. */
export const partOf = (x: Uncertain, source: string): number => Math.abs(x.parts.get(source) ?? 0);
export { standardUncertainty };
