import { certain, expanded, subtract, type Uncertain, unfit } from "../doubt/index.ts";
import { type Outcome, ok } from "../outcome/index.ts";
import { FLOW_EXPONENT, headLost } from "./friction.ts";
import type { OperatingPoint } from "./operating-point.ts";
import { type PumpCurve, pumpHead } from "./pump-curve.ts";
import { type SystemCurve, systemAt, unfitSystem } from "./system-curve.ts";

export interface FlowComparison {
  /** Measured less expected, m³/s. */
  readonly difference: Uncertain;
  readonly verdict: "agree within their doubt" | "less than expected" | "more than expected";
}

/** The measured flow beside the expected one; what lies within the doubt of their difference is no difference. */
export function compareFlow(expected: Uncertain, measured: Uncertain): Outcome<FlowComparison> {
  const bad = unfit("flow", "positive", { expected, measured });
  if (bad) return bad;
  const difference = subtract(measured, expected);
  const verdict =
    Math.abs(difference.value) <= expanded(difference)
      ? "agree within their doubt"
      : difference.value < 0
        ? "less than expected"
        : "more than expected";
  return ok({ difference, verdict });
}

export type FlowCause = "static head" | "blockage" | "air" | "wrong curve" | "C";

/** How far off one cause alone would have to be for the measured flow to be the expected one. */
export interface Explanation {
  readonly cause: FlowCause;
  /** What it would have to be: metres of static head, metres of head lost at the blockage, share of air, share of the card's head, C. */
  readonly wouldBe?: number;
  /** That less what was assumed, same unit. Both absent where not even a senseless figure would do. */
  readonly off?: number;
  /** `off` in the size of what is ordinary for this cause: its own U, or our own figure where it has none. Ranks by this. */
  readonly timesOrdinary: number;
  /** For a blockage: the bore that the whole line would have to have, as a share of its own. */
  readonly asBoreShare?: number;
  /** Set where no size of this cause gives the measured flow. */
  readonly cannot?: "wrong direction" | "not possible";
}

/** What is ordinary where an input brings no doubt of its own: all own. Metres, share, share, unit of C. */
const ordinary = { staticHead: 0.15, blockageShare: 0.1, air: 0.05, C: 10 } as const;
/** No pipe is smoother than this (published range 150 to 160). */
const SMOOTHEST = 160;

const orOrdinary = (input: Uncertain, own: number): number => Math.max(expanded(input), own);

/** The bore, as a share of its own along the whole line, whose friction is `head` more; by bisection, since sections differ. */
function narrowedTo(system: SystemCurve, flow: number, head: number): number {
  const friction = (share: number): number =>
    system.sections.reduce((sum, s) => sum + headLost(flow, { ...s, bore: certain(s.bore.value * share) }), 0);
  const wanted = friction(1) + head;
  let [narrow, wide] = [0.01, 1];
  for (let i = 0; i < 60; i++) {
    const middle = (narrow + wide) / 2;
    if (friction(middle) > wanted) narrow = middle;
    else wide = middle;
  }
  return (narrow + wide) / 2;
}

interface Balance {
  readonly system: SystemCurve;
  readonly expected: number;
  readonly measured: number;
  /** Head that the pump gives at the measured flow and the system does not account for, metres; positive when less flow came. */
  readonly missing: number;
  readonly pump: Uncertain;
}

function staticHead({ system, missing }: Balance): Explanation {
  const wouldBe = system.staticHead.value + missing;
  const found = {
    cause: "static head",
    wouldBe,
    off: missing,
    timesOrdinary: Math.abs(missing) / orOrdinary(system.staticHead, ordinary.staticHead),
  } as const;
  return wouldBe < 0 ? { ...found, cannot: "not possible" } : found;
}

function blockage({ system, measured, missing }: Balance): Explanation {
  const share = missing > 0 && system.sections.length > 0 ? narrowedTo(system, measured, missing) : 1;
  const found = {
    cause: "blockage",
    wouldBe: missing,
    off: missing,
    timesOrdinary: (1 - share) / ordinary.blockageShare,
    asBoreShare: share,
  } as const;
  return missing > 0 ? found : { ...found, cannot: "wrong direction" };
}

/** First order, own: the pump moves the same volume, and the share of it that is air is no water. Air spoils the head as well. */
function air({ expected, measured }: Balance): Explanation {
  const share = 1 - measured / expected;
  const found = { cause: "air", wouldBe: share, off: share, timesOrdinary: Math.abs(share) / ordinary.air } as const;
  return share > 0 ? found : { ...found, cannot: "wrong direction" };
}

function wrongCurve({ pump, missing }: Balance): Explanation {
  const wouldBe = (pump.value - missing) / pump.value;
  return { cause: "wrong curve", wouldBe, off: wouldBe - 1, timesOrdinary: Math.abs(missing) / Math.max(expanded(pump), 1e-9) };
}

/** Each section's C in the same proportion, so that friction grows by what is missing; the first section's is told. */
function coefficient({ system, measured, missing }: Balance): Explanation {
  const friction = system.sections.reduce((sum, section) => sum + headLost(measured, section), 0);
  const assumed = system.sections[0]?.coefficient;
  if (assumed === undefined || friction <= 0 || friction + missing <= 0)
    return { cause: "C", timesOrdinary: Number.POSITIVE_INFINITY, cannot: "not possible" };
  const wouldBe = assumed.value * (friction / (friction + missing)) ** (1 / FLOW_EXPONENT);
  const off = wouldBe - assumed.value;
  const found = { cause: "C", wouldBe, off, timesOrdinary: Math.abs(off) / orOrdinary(assumed, ordinary.C) } as const;
  return wouldBe <= SMOOTHEST ? found : { ...found, cannot: "not possible" };
}

/**
 * What could explain a measured flow that is not the expected one, likeliest first: each cause alone, by how far off it would have
 * to be in the size of what is ordinary for it. What cannot explain it stands last and says why. A ranking to look by, not a proof.
 * Refuses a measured flow beyond the card's points: the pump's head is not known there.
 */
export function explainFlow(
  curve: PumpCurve,
  system: SystemCurve,
  expected: OperatingPoint,
  measured: Uncertain,
): Outcome<readonly Explanation[]> {
  const bad = unfit("flow", "positive", { expected: expected.flow, measured }) ?? unfitSystem(system);
  if (bad) return bad;
  const pump = pumpHead(curve, measured.value);
  if (!pump.ok) return pump;
  const missing = pump.value.value - systemAt(system, measured.value).head;
  const balance: Balance = { system, expected: expected.flow.value, measured: measured.value, missing, pump: pump.value };
  const all = [staticHead(balance), blockage(balance), air(balance), wrongCurve(balance), coefficient(balance)];
  const last = (one: Explanation): number => (one.cannot === undefined ? 0 : 1);
  return ok(all.sort((a, b) => last(a) - last(b) || a.timesOrdinary - b.timesOrdinary));
}
