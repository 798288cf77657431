import { expanded, subtract } from "../doubt/index.ts";
import { type Explanation, explainFlow } from "../plumbing/index.ts";
import { leaveCore, toInteger } from "../tolerance/index.ts";
import { fixedPerSi, type QuantityKind } from "../units/index.ts";
import { namedContributors } from "./contributors.ts";
import type { Evaluation } from "./evaluation.ts";
import { type CheckPart, type FlowExplained, message } from "./finding.ts";

/** What each cause would have to be is told in. */
const kinds: Readonly<Record<Explanation["cause"], QuantityKind>> = {
  "static head": "length",
  blockage: "length",
  air: "ratio",
  "wrong curve": "ratio",
  C: "count",
};
const PER_MILLION = 1e6;
/** A cause that would have to be so many times what is ordinary, or more, is told as that many. */
const MOST_TIMES = 1000;

function asStored({ cause, wouldBe, off, timesOrdinary, asBoreShare, cannot }: Explanation): FlowExplained {
  const kind = kinds[cause];
  const perSi = fixedPerSi(kind);
  return {
    cause,
    kind,
    ...(wouldBe === undefined ? {} : { wouldBe: toInteger(wouldBe * perSi) }),
    ...(off === undefined ? {} : { off: toInteger(off * perSi) }),
    ...(asBoreShare === undefined || cannot !== undefined ? {} : { boreShare: toInteger(asBoreShare * PER_MILLION) }),
    times: toInteger(Math.min(MOST_TIMES, timesOrdinary) * PER_MILLION),
    ...(cannot === undefined ? {} : { cannot }),
  };
}

type Compared = Extract<Evaluation, { state: "value" }> & { readonly flow: object };

/**
 * A measured flow against the expected one. `doubt` is that of their difference, and the limits lie that far to either side of what
 * is expected: what differs by more is not the flow of the design, and the causes are ranked. The verdict is taken from the integers.
 */
export function flowPart({ value: measured, flow, unsettled }: Compared): CheckPart {
  const kind = "flow";
  const perSi = fixedPerSi(kind);
  const { line, point } = flow;
  const [found, expected] = [leaveCore(measured, perSi), leaveCore(point.flow, perSi)];
  const difference = subtract(measured, point.flow);
  const doubt = toInteger(expanded(difference) * perSi);
  const off = found.value - expected.value;
  const agrees = Math.abs(off) <= doubt;
  const ranked = agrees ? undefined : explainFlow(line.curve, line.system, point, measured);
  const differs = ranked?.ok ? (off < 0 ? "flow.less" : "flow.more") : "flow.off-card";
  const says = message(agrees ? "flow.as-expected" : differs, {
    measuredDoubtFlow: found.expanded,
    expectedFlow: expected.value,
    expectedDoubtFlow: expected.expanded,
    byFlow: Math.abs(off),
  });
  return {
    kind,
    value: found.value,
    doubt,
    aim: expected.value,
    lower: Math.max(0, expected.value - doubt),
    upper: expected.value + doubt,
    contributors: namedContributors(difference, kind),
    ...(ranked?.ok ? { explains: ranked.value.map(asStored) } : {}),
    ...(unsettled ? { verdict: "too close to call", says: unsettled } : { verdict: agrees ? "within" : "outside", says }),
  };
}
