import { type Uncertain, unfit } from "../doubt/index.ts";
import { headLost, headLostSlope, type PipeSection } from "./friction.ts";

/** A loss that grows with the square of the flow and has no length: a strainer, a box with a filter mat, a diffuser. */
export interface KnownLoss {
  /** Metres of water at `flow` m³/s, from the part's paper. */
  readonly head: Uncertain;
  readonly flow: number;
}

/** What the pump works against. */
export interface SystemCurve {
  /** From the basin's water while running up to the lip's water, metres; a syphon cannot be had from an open fall. */
  readonly staticHead: Uncertain;
  readonly sections: readonly PipeSection[];
  readonly knownLosses?: readonly KnownLoss[];
}

const share = (loss: KnownLoss, flow: number): number => (flow / loss.flow) ** 2;

/** Static head plus all losses at a flow, metres, and the slope over flow. */
export function systemAt(system: SystemCurve, flow: number): { readonly head: number; readonly slope: number } {
  let { value: head } = system.staticHead;
  let slope = 0;
  for (const section of system.sections) {
    head += headLost(flow, section);
    slope += headLostSlope(flow, section);
  }
  for (const loss of system.knownLosses ?? []) {
    head += loss.head.value * share(loss, flow);
    slope += flow === 0 ? 0 : (2 * loss.head.value * share(loss, flow)) / flow;
  }
  return { head, slope };
}

/** The known losses at a flow, as terms of the head with their doubt. */
export const knownLossTerms = (system: SystemCurve, flow: number) =>
  (system.knownLosses ?? []).map((loss) => ({ times: share(loss, flow), of: loss.head }));

/** The refusal of the first figure of the system that is senseless; a static head below zero is a fall that runs by itself. */
export function unfitSystem(system: SystemCurve) {
  const sections = system.sections.map(
    ({ length, bore, coefficient }, i) =>
      unfit(`system/sections/${i}`, "not negative", { length }) ?? unfit(`system/sections/${i}`, "positive", { bore, coefficient }),
  );
  const losses = (system.knownLosses ?? []).map(
    ({ head, flow }, i) =>
      unfit(`system/knownLosses/${i}`, "not negative", { head }) ?? unfit(`system/knownLosses/${i}`, "positive", { flow }),
  );
  return unfit("system", "not negative", { staticHead: system.staticHead }) ?? [...sections, ...losses].find((one) => one !== undefined);
}
