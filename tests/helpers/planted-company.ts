import { type Asking, type Observed, type QuestionId, questions, type Signal, type SignalKind, usualAsking } from "#core/quality/index.ts";
import { companyFrom, type Effects, planted, today } from "#infra/company/index.ts";

const asking: Asking = { ...usualAsking(today), persons: true };

export interface Found {
  readonly question: QuestionId;
  readonly signal: Signal;
}

/** Everything that stands out in a company, by question. */
export const signalsOf = (observed: Observed): readonly Found[] =>
  questions.flatMap(({ id, answer }) => answer(observed, asking).signals.map((signal) => ({ question: id, signal })));

/** What each planted effect must be found as. */
export const expectedOf = ({
  drift,
  nominal,
  ring,
  idle,
  winter,
}: Effects): readonly { readonly what: SignalKind; readonly id?: string }[] => [
  ...(drift ? [{ what: "instrument drifts", id: drift.laser } as const] : []),
  ...(nominal ? [{ what: "typed the nominal", id: nominal.foreman } as const] : []),
  ...(ring ? [{ what: "picture used again" } as const] : []),
  ...(idle ? [{ what: "item never finds anything", id: `${idle.step}-seen` } as const] : []),
  ...(winter ? [{ what: "part fails", id: winter.part } as const, { what: "comes back by season", id: winter.part } as const] : []),
];

/**
 * What follows from a planted effect by itself: a drifting laser is found off when it is checked, and what somebody else reads again
 * is not the figure that was typed.
 */
const follows = ({ signal: { what, about } }: Found, { drift, nominal }: Effects): boolean =>
  (what === "instrument off" && about.id === drift?.laser) || (what === "second look differs" && nominal !== undefined);

/** Of many seeded companies: in how many each planted effect was found, and in how many each question said something unplanted. */
export function rates(jobs: number, seeds: readonly number[], effects: Effects) {
  const expected = expectedOf(effects);
  const found = new Map<SignalKind, number>(expected.map(({ what }) => [what, 0]));
  const unplanted = new Map<QuestionId, number>();
  for (const seed of seeds) {
    const all = signalsOf(companyFrom({ seed, jobs, effects }));
    const is = ({ signal }: Found, one: (typeof expected)[number]): boolean =>
      signal.what === one.what && (one.id === undefined || signal.about.id === one.id);
    for (const one of expected) if (all.some((own) => is(own, one))) found.set(one.what, (found.get(one.what) ?? 0) + 1);
    const odd = all.filter((own) => !expected.some((one) => is(own, one)) && !follows(own, effects));
    for (const id of new Set(odd.map(({ question }) => question))) unplanted.set(id, (unplanted.get(id) ?? 0) + 1);
  }
  return { found: Object.fromEntries(found), unplanted: Object.fromEntries(unplanted) };
}

export const seedsFrom = (first: number, count: number): readonly number[] => Array.from({ length: count }, (_, i) => first + i);
export { planted };
