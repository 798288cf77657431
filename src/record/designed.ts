import {
  type Check,
  type Design,
  designFor,
  designSwitches,
  type Expectation,
  type ExpectationId,
  expectations,
  type Finding,
  type Instead,
} from "../job/index.ts";
import { fixedPerSi } from "../units/index.ts";
import type { Context } from "./context.ts";

/** What the newest design leads to, with what else is known in the place of its figures. */
export function expectedBy({ state, sheet }: Context, instead: Instead = {}): ReadonlyMap<ExpectationId, Expectation> {
  const design = designFor(state, undefined);
  const all = expectations({ design, kitCards: state.kitCards }, designSwitches(sheet, design), instead);
  return new Map(all.map((one) => [one.id, one]));
}

export const designOf = ({ state }: Context): Design => designFor(state, undefined);

export const checkOf = ({ sheet }: Context, finding: Finding): Check | undefined =>
  finding.of === "check" ? sheet.checks.find(({ id }) => id === finding.check) : undefined;

/** The named function of the core that a check's aim comes from, if it does. */
export const aimOf = (check: Check | undefined): string | undefined => (typeof check?.aim === "object" ? check.aim.function : undefined);

/** Findings with a value whose check is such. */
export const measuredWhere = (context: Context, isSuch: (check: Check) => boolean): readonly Finding[] =>
  context.findings.filter((finding) => {
    const check = checkOf(context, finding);
    return check !== undefined && isSuch(check) && finding.kind !== undefined && finding.value !== undefined;
  });

/** The basin's tilt as it was measured, the worse way, in the place of the design's. */
export function measuredTilt(context: Context): Instead {
  const tilts = measuredWhere(context, ({ function: named, kind }) => named === "out of level" && kind === "length");
  const worst = tilts.reduce<Finding | undefined>(
    (a, b) => (a === undefined || Math.abs(b.value ?? 0) > Math.abs(a.value ?? 0) ? b : a),
    undefined,
  );
  if (worst?.value === undefined) return {};
  const perMetre = fixedPerSi("length");
  const u = (worst.doubt ?? 0) / 2 / perMetre;
  return { outOfLevel: { value: Math.abs(worst.value) / perMetre, parts: new Map([["figure:outOfLevel", u]]) } };
}
