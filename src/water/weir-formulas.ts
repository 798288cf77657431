import { faultIn, refused } from "../doubt/index.ts";
import { type Outcome, ok, refuse } from "../outcome/index.ts";
import { feet } from "../units/index.ts";
import { STANDARD_GRAVITY } from "./factors.ts";
import { kindsvaterCarterAt } from "./weir-coefficients.ts";

/**
 * Flow over a lip by head.
 *
 *   Francis, across the whole channel   Q = 3.33 L h^1.5                          cfs, ft
 *   Francis, open at both ends          Q = 3.33 (L - 0.2 h) h^1.5                cfs, ft
 *   Kindsvater-Carter                   Q = C_e (L + k_b) (h + k_h)^1.5, C_e = C1 h/p + C2, k_h = 0.003 ft
 *   Rehbock                             Q = 2/3 √(2g) (0.602 + 0.0832 h/p) L (h + 0.00125)^1.5    m
 *   broad-crested, ideal                Q = (2/3)^1.5 √g L h^1.5
 *
 *   Q  flow, m³/s          h  water behind the lip above it, m (`head`)
 *   L  lip, m (`length`)   p  lip above the floor behind it, m (`crestHeight`)
 *   B  width of the channel before the lip, m (`channelWidth`; absent: the lip spans it)
 *
 * Range: `outsideRange`. A landscape spillway runs at 5 to 30 mm, below the range of every one of them: the sheet clings and
 * surface tension matters. Sources: USBR Water Measurement Manual ch. 7; EPA SWMM Reference Manual vol. II; Rehbock and its range
 * as Blevins has them in the fluids library's open_flow module (others round to 0.083 and 0.0012: 0.05 % less). Expected accuracy: 2 to 5 % within range, 20 % or worse below it (own).
 */
export const weirFormulas = ["Francis", "Francis, open at both ends", "Kindsvater-Carter", "Rehbock", "broad-crested"] as const;
export type WeirFormula = (typeof weirFormulas)[number];

export interface Lip {
  readonly length: number;
  readonly crestHeight: number;
  readonly channelWidth?: number;
}

const rootFoot = Math.sqrt(feet(1));
/** ft^½/s in m^½/s: 3.33 is 1.8384. */
const fromUsCoefficient = (c: number): number => c * rootFoot;
export const FRANCIS = fromUsCoefficient(3.33);
export const BROAD_CRESTED = (2 / 3) ** 1.5 * Math.sqrt(STANDARD_GRAVITY);
const HEAD_CORRECTION = feet(0.003);

function flowAt(formula: WeirFormula, { length, crestHeight, channelWidth = length }: Lip, head: number): number {
  switch (formula) {
    case "Francis":
      return FRANCIS * length * head ** 1.5;
    case "Francis, open at both ends":
      return FRANCIS * (length - 0.2 * head) * head ** 1.5;
    case "Kindsvater-Carter": {
      const { c1, c2, kb } = kindsvaterCarterAt(length / channelWidth);
      return fromUsCoefficient((c1 * head) / crestHeight + c2) * (length + kb) * (head + HEAD_CORRECTION) ** 1.5;
    }
    case "Rehbock":
      return (2 / 3) * Math.sqrt(2 * STANDARD_GRAVITY) * (0.602 + (0.0832 * head) / crestHeight) * length * (head + 0.00125) ** 1.5;
    case "broad-crested":
      return BROAD_CRESTED * length * head ** 1.5;
  }
}

function lipFault({ length, crestHeight, channelWidth }: Lip) {
  return (
    faultIn("lip", { length: [length, "positive"], crestHeight: [crestHeight, "positive"], channelWidth: [channelWidth, "positive"] }) ??
    faultIn("lip", { lengthOverChannelWidth: [channelWidth === undefined ? 1 : length / channelWidth, [0.2, 1]] })
  );
}

/** Flow in m³/s at a head in metres. Refuses sizes that are not above zero, and a lip under a fifth of its channel or wider than it. */
export function weirFlow(formula: WeirFormula, lip: Lip, head: number): Outcome<number> {
  const fault = lipFault(lip) ?? faultIn("lip", { head: [head, "positive"], lengthLessEnds: [lip.length - 0.2 * head, "positive"] });
  return fault ? refused(fault) : ok(flowAt(formula, lip, head));
}

/** Halvings of the interval: below a thousandth of a millimetre from a metre in 20, to the last digit in 60. */
const HALVINGS = 60;

/** Head in metres for a flow in m³/s, up to twice the lip's length. Refuses a flow that no such head gives. */
export function weirHead(formula: WeirFormula, lip: Lip, flow: number): Outcome<number> {
  const fault = lipFault(lip) ?? faultIn("lip", { flow: [flow, "positive"] });
  if (fault) return refused(fault);
  let [low, high] = [0, 2 * lip.length];
  if (flowAt(formula, lip, high) < flow) return refuse("reading-out-of-range", "lip/flow", { found: flow.toString() });
  for (let i = 0; i < HALVINGS; i++) {
    const middle = (low + high) / 2;
    if (flowAt(formula, lip, middle) < flow) low = middle;
    else high = middle;
  }
  return ok((low + high) / 2);
}

export type OutsideRange = "head" | "lip length" | "crest height" | "head over crest height";

/**
 * Which of the sizes lie outside the range of the sharp-crested formulas. Least head: 30 mm for Rehbock (fluids library), 0.2 ft for
 * the others (USBR, from memory). Lip and crest above 0.3 m, head over crest height below 1, head below 0.75 m: Rehbock's own.
 */
export function outsideRange(formula: WeirFormula, { length, crestHeight }: Lip, head: number): readonly OutsideRange[] {
  const rehbock = formula === "Rehbock";
  const outside: readonly (readonly [OutsideRange, boolean])[] = [
    ["head", !(head >= (rehbock ? 0.03 : feet(0.2)) && (!rehbock || head < 0.75))],
    ["lip length", rehbock && !(length > 0.3)],
    ["crest height", rehbock && !(crestHeight > 0.3)],
    ["head over crest height", rehbock && !(head / crestHeight < 1)],
  ];
  return outside.filter(([, out]) => out).map(([name]) => name);
}
