import { contributingRoles, type Uncertain, withSource } from "../doubt/index.ts";
import { judge, leaveCore, toInteger } from "../tolerance/index.ts";
import { fixedPerSi, type QuantityKind } from "../units/index.ts";
import type { Bounds, LimitsFound } from "./check-limits.ts";
import { namedContributors } from "./contributors.ts";
import { steadyLimit } from "./evaluate.ts";
import type { Evaluation } from "./evaluation.ts";
import { type CheckPart, type Finding, type Message, message, type Verdict } from "./finding.ts";
import { flowPart } from "./flow-part.ts";
import { longerTest } from "./longer-test.ts";
import { planArea } from "./plan-area.ts";
import { roomSays } from "./room-for-rain.ts";
import type { Check } from "./sheet.ts";
import type { JobState } from "./state.ts";

/** Water that a tilt costs, millilitres: plan area × half the tilt. */
function waterLost(state: JobState, holds: string | undefined, tilt: number): number | undefined {
  const area = planArea(state, holds);
  return area === undefined ? undefined : toInteger(((area * tilt) / fixedPerSi("length") / 2) * fixedPerSi("volume"));
}

const rules = { guarded: "guarded", "simple acceptance": "simple" } as const;
const saysOf: Readonly<Record<Extract<Verdict, "within" | "outside" | "too close to call">, string>> = {
  within: "value.within",
  outside: "value.outside",
  "too close to call": "value.too-close",
};

/** The three that bring the most doubt: what is new at each reading by its role, and a limit that is derived. */
function contributors(value: Uncertain, kind: QuantityKind, limit: number | undefined): NonNullable<Finding["contributors"]> {
  const read = contributingRoles(value, 3).map(({ source, u }) => ({ name: source as string, u: toInteger(u * fixedPerSi(kind)) }));
  const all = limit === undefined ? read : [...read, { name: "limit", u: toInteger(limit) }];
  return all.sort((a, b) => b.u - a.u).slice(0, 3);
}

/** Checks whose value rests on figures of the design as much as on readings: the figures are named too. */
const named = (check: Check): boolean => check.function === "loss a day" || check.function === "room for rain";

/**
 * The verdict on a value with its doubt, taken from the integers that are stored. The doubt of a limit that is derived from the
 * design is added to the value's in quadrature: the two are compared, and neither is known better than that.
 */
export function valuePart(
  state: JobState,
  check: Check,
  evaluation: Extract<Evaluation, { state: "value" }>,
  { bounds: found, doubt: u }: Pick<LimitsFound, "bounds" | "doubt">,
  holds: string | undefined,
): CheckPart {
  if (evaluation.flow !== undefined) return flowPart({ ...evaluation, flow: evaluation.flow });
  const perSi = fixedPerSi(check.kind);
  const compared = u === undefined ? evaluation.value : withSource(evaluation.value, "design:limit", u / perSi);
  const { value, expanded: doubt } = leaveCore(compared, perSi);
  const steady = check.function === "steady";
  const bounds: Bounds = steady ? { aim: 0, upper: toInteger(steadyLimit(evaluation.value) * perSi) } : found;
  const judged = judge({ value, expanded: steady ? 0 : doubt, rule: rules[check.rule ?? "guarded"], ...bounds });
  if (!judged.ok) return { verdict: "not taken", says: message("check.limit-unknown"), unknown: [] };
  const { verdict, by, needed } = judged.value;
  const costs = check.costs === "water lost to tilt" ? waterLost(state, holds, value) : undefined;
  const longer = verdict === "too close to call" ? longerTest(evaluation.leak, bounds.upper) : undefined;
  const ofRain = check.function === "room for rain" ? roomSays(verdict, value, bounds.lower, by) : undefined;
  const says: Message = longer ?? ofRain ?? message(saysOf[verdict], { by, ...(needed === undefined ? {} : { needed }) });
  return {
    kind: check.kind,
    value,
    doubt,
    ...bounds,
    contributors: named(check) ? namedContributors(compared, check.kind) : contributors(evaluation.value, check.kind, u),
    ...(evaluation.place === undefined ? {} : { place: evaluation.place }),
    ...(evaluation.soFar ? { soFar: true } : {}),
    ...(costs === undefined ? {} : { costs: { kind: "volume" as const, value: costs } }),
    // what nothing can settle but another reading never reads as better than too close to call
    ...(evaluation.unsettled ? { verdict: "too close to call", says: evaluation.unsettled } : { verdict, says }),
  };
}
