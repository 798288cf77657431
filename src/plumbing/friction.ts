import { add, certain, firstOrder, type Uncertain, unfit } from "../doubt/index.ts";
import { type Outcome, ok } from "../outcome/index.ts";
import { metres, toInches } from "../units/index.ts";
import { toGallonsPerMinute } from "./flow-units.ts";

/** One run of one pipe. All with doubt: length in metres with its fittings as equivalent length, bore in metres, C without unit. */
export interface PipeSection {
  readonly length: Uncertain;
  readonly bore: Uncertain;
  readonly coefficient: Uncertain;
}

export const FLOW_EXPONENT = 1.852;
const BORE_EXPONENT = 4.8655;

/** The gradient as the source prints it: feet of water per 100 ft of pipe, here per foot, hence metres per metre. */
const gradient = (flow: number, bore: number, coefficient: number): number =>
  (0.2083 / 100) *
  ((100 / coefficient) ** FLOW_EXPONENT * (toGallonsPerMinute(flow) ** FLOW_EXPONENT / toInches(metres(bore)) ** BORE_EXPONENT));

/** Head that friction takes, metres, without doubt and without refusals: for solving. `flow` m³/s, not negative. */
export const headLost = (flow: number, section: PipeSection): number =>
  section.length.value * gradient(flow, section.bore.value, section.coefficient.value);

/** Slope of `headLost` over flow, metres per m³/s. */
export const headLostSlope = (flow: number, section: PipeSection): number =>
  flow === 0 ? 0 : (FLOW_EXPONENT * headLost(flow, section)) / flow;

/**
 * Head that friction takes, metres of water, by Hazen-Williams:
 *
 *   hf = 0.2083 (100/C)^1.852 q^1.852 / d^4.8655
 *
 * hf   head lost, feet of water per 100 ft of pipe; the result is metres over the section's length
 * C    roughness coefficient, `coefficient`
 * q    flow, US gallons a minute, `flow` (m³/s here)
 * d    inside diameter, inches, `bore` (metres here)
 *
 * One form only. The SI form (10.67, 4.8704), the original (1.318 C R^0.63 S^0.54) and the psi form (4.52) lie about 1.2 % lower at
 * 1-1/2 and 2 in. This one is taken because the pipe's own trade association prints it, because the published tables for plastic
 * pipe that the tests hold were made with it, and because of two answers it gives the one with more friction.
 * Range: water near 60 °F, full pipe, turbulent; below about 10 ft/s (from memory). Accuracy: some 5 % against Colebrook for smooth
 * pipe of these sizes, C apart. Source: SEEN in many copies, one quoting the association's specification.
 */
export function frictionLoss(flow: Uncertain, section: PipeSection): Outcome<Uncertain> {
  const { length, bore, coefficient } = section;
  const bad = unfit("friction", "not negative", { flow, length }) ?? unfit("friction", "positive", { bore, coefficient });
  if (bad) return bad;
  const head = headLost(flow.value, section);
  return ok(
    firstOrder(head, [
      { times: headLostSlope(flow.value, section), of: flow },
      { times: gradient(flow.value, bore.value, coefficient.value), of: length },
      { times: (-FLOW_EXPONENT * head) / coefficient.value, of: coefficient },
      { times: (-BORE_EXPONENT * head) / bore.value, of: bore },
    ]),
  );
}

/** Sections one after another carry the same flow, and their losses add. Metres; zero for none. */
export function frictionInSeries(flow: Uncertain, sections: readonly PipeSection[]): Outcome<Uncertain> {
  let sum = certain(0);
  for (const section of sections) {
    const loss = frictionLoss(flow, section);
    if (!loss.ok) return loss;
    sum = add(sum, loss.value);
  }
  return ok(sum);
}
