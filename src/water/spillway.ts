import { add, faultIn, firstOrder, product, quotient, refused, scale, type Uncertain } from "../doubt/index.ts";
import { type Outcome, ok, refuse } from "../outcome/index.ts";
import { feet, METRES_PER_INCH } from "../units/index.ts";
import { ofFactor, STANDARD_GRAVITY, waterFactors } from "./factors.ts";
import { FRANCIS, type Lip, type OutsideRange, outsideRange, type WeirFormula, weirFormulas, weirHead } from "./weir-formulas.ts";

/**
 * What stands on a spillway's lip.
 *
 *   q = Q / L        h = (q / 1.8384)^⅔        y_c = (q² / g)^⅓        y_b = 0.715 y_c
 *
 *   Q    flow, m³/s (`flow`)          L    lip, m (`lipLength`)
 *   q    flow per lip, m²/s (`flowPerLip`); 100 gph per inch is 4.14e-3
 *   h    water behind the lip above it, by Francis, m (`head`)
 *   y_c  critical depth, m (`criticalDepth`); y_b the sheet at the brink, m (`sheet`)
 *
 * Range: see `weir-formulas.ts`; below 0.2 ft, so on nearly every landscape lip, the head is an estimate of ± 20 % or worse (own)
 * and says so. Source: Francis, as USBR Water Measurement Manual ch. 7 prints it; brink depth from memory.
 */
export const LEAST_HEAD_OF_FORMULAS = feet(0.2);

/** Gallons per hour per inch of lip, the trade's unit, in m²/s. */
export const gallonsPerHourPerInch = (n: number): number => (n * 231 * METRES_PER_INCH * METRES_PER_INCH) / 3600;
export const toGallonsPerHourPerInch = (flowPerLip: number): number => flowPerLip / gallonsPerHourPerInch(1);

/** Flow per length of lip, m²/s. */
export function flowPerLip(flow: Uncertain, lipLength: Uncertain): Outcome<Uncertain> {
  const fault = faultIn("spillway", { flow: [flow, "positive"], lipLength: [lipLength, "positive"] });
  return fault ? refused(fault) : ok(quotient(flow, lipLength));
}

/** Flow that a lip needs for a wanted flow per length of it, m³/s. */
export function flowForLip(wantedPerLip: Uncertain, lipLength: Uncertain): Outcome<Uncertain> {
  const fault = faultIn("spillway", { wantedPerLip: [wantedPerLip, "positive"], lipLength: [lipLength, "positive"] });
  return fault ? refused(fault) : ok(product(wantedPerLip, lipLength));
}

/** (q ÷ divisor)^⅔, whose slope is ⅔ of itself over q. */
function twoThirdsPower(q: Uncertain, divisor: number): Uncertain {
  const value = Math.cbrt((q.value / divisor) * (q.value / divisor));
  return firstOrder(value, [{ times: (2 / 3) * (value / q.value), of: q }]);
}

export interface Sheet {
  readonly flowPerLip: Uncertain;
  readonly head: Uncertain;
  readonly criticalDepth: Uncertain;
  readonly sheet: Uncertain;
  /** `heads out of range`: below the least head of every standard formula; print it beside the head. */
  readonly warning?: "heads out of range";
}

/** What stands on the lip at a flow. */
export function sheetOverLip(flow: Uncertain, lipLength: Uncertain): Outcome<Sheet> {
  const perLip = flowPerLip(flow, lipLength);
  if (!perLip.ok) return perLip;
  const estimate = ofFactor(waterFactors.lipHead);
  const head = product(twoThirdsPower(perLip.value, FRANCIS), estimate);
  const criticalDepth = product(twoThirdsPower(perLip.value, Math.sqrt(STANDARD_GRAVITY)), estimate);
  const answer = { flowPerLip: perLip.value, head, criticalDepth, sheet: scale(criticalDepth, waterFactors.brink.value) };
  return ok(head.value < LEAST_HEAD_OF_FORMULAS ? { ...answer, warning: "heads out of range" } : answer);
}

export interface HeadByFormula {
  readonly formula: WeirFormula;
  /** Metres. Absent where the formula gives none for this flow. */
  readonly head?: number;
  readonly outside: readonly OutsideRange[];
}

/** The head of one flow (m³/s) by each formula, side by side, with what is outside its range. */
export function headsByFormula(lip: Lip, flow: number): Outcome<readonly HeadByFormula[]> {
  const first = weirHead("Francis", lip, flow);
  if (!first.ok) return first;
  return ok(
    weirFormulas.map((formula) => {
      const head = weirHead(formula, lip, flow);
      return head.ok ? { formula, head: head.value, outside: outsideRange(formula, lip, head.value) } : { formula, outside: [] };
    }),
  );
}

/** Several lips one below the other share one flow; several side by side share it out: the flow they need adds up, m³/s. */
export function flowOfLips(lips: readonly { readonly wantedPerLip: Uncertain; readonly length: Uncertain }[]): Outcome<Uncertain> {
  let sum: Uncertain | undefined;
  for (const { wantedPerLip, length } of lips) {
    const flow = flowForLip(wantedPerLip, length);
    if (!flow.ok) return flow;
    sum = sum === undefined ? flow.value : add(sum, flow.value);
  }
  return sum === undefined ? refuse("number-not-positive", "spillway/lips") : ok(sum);
}
