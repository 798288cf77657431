import { type Agreement, agreeWithinDoubt, faultIn, product, quotient, refused, subtract, type Uncertain } from "../doubt/index.ts";
import { type Outcome, ok } from "../outcome/index.ts";

/**
 * How far the water in the basin goes down from rest to running.
 *
 *   Δ_e = V_t / a          Δ_m = z_run - z_rest          V_m = a Δ_m
 *
 *   V_t  water in transit, m³ (`inTransit`)      a  water per depth of the basin, m³ per m (`perDepth`)
 *   z    down from one mark on the rim to the water, m (`atRest`, `running`)
 *   Δ    draw-down, m: expected, measured
 *
 * Source: own. What stood on the mark and the tape's own error cancel in Δ_m, where both readings name them alike.
 */
export function expectedDrawDown(inTransit: Uncertain, perDepth: Uncertain): Outcome<Uncertain> {
  const fault = faultIn("basin", { inTransit: [inTransit, "not negative"], perDepth: [perDepth, "positive"] });
  return fault ? refused(fault) : ok(quotient(inTransit, perDepth));
}

/** Measured draw-down in metres; negative where the water rose, which make-up water or rain explains. */
export function measuredDrawDown(atRest: Uncertain, running: Uncertain): Outcome<Uncertain> {
  const fault = faultIn("drawDown", { atRest: [atRest, "finite"], running: [running, "finite"] });
  return fault ? refused(fault) : ok(subtract(running, atRest));
}

export interface DrawDownCompared {
  readonly expected: Uncertain;
  readonly measured: Uncertain;
  /** Measured less expected, m; positive: more water is away than the design has. */
  readonly difference: Uncertain;
  /** The same in water, m³. */
  readonly unexplained: Uncertain;
  readonly agreement: Agreement;
}

/** Expected against measured, whether they agree within their doubt, and the water that is not explained. */
export function compareDrawDown(
  inTransit: Uncertain,
  perDepth: Uncertain,
  atRest: Uncertain,
  running: Uncertain,
): Outcome<DrawDownCompared> {
  const expected = expectedDrawDown(inTransit, perDepth);
  if (!expected.ok) return expected;
  const measured = measuredDrawDown(atRest, running);
  if (!measured.ok) return measured;
  const difference = subtract(measured.value, expected.value);
  return ok({
    expected: expected.value,
    measured: measured.value,
    difference,
    unexplained: subtract(product(perDepth, measured.value), inTransit),
    agreement: agreeWithinDoubt(expected.value, measured.value),
  });
}
