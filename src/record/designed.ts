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
