import { throughSteps, type Uncertain, unfit } from "../doubt/index.ts";
import { type Outcome, ok } from "../outcome/index.ts";

/** Standard gravity, m/s². */
const GRAVITY = 9.80665;
/** Kinematic viscosity of water at 20 °C, m²/s. */
export const WATER_VISCOSITY_20C = 1.004e-6;
/** Roughness height of smooth plastic, metres: a hundredth of a hair; makers print 1.5 µm (from memory). */
export const SMOOTH_PLASTIC_ROUGHNESS = 1.5e-6;

/** Between the two neither law holds and the flow may change from one to the other: said by name. Textbook bounds, from memory. */
const LAMINAR_BELOW = 2000;
const TURBULENT_FROM = 4000;
export type FlowRegime = "laminar" | "between laminar and turbulent" | "turbulent";

const regimeAt = (reynolds: number): FlowRegime =>
  reynolds < LAMINAR_BELOW ? "laminar" : reynolds < TURBULENT_FROM ? "between laminar and turbulent" : "turbulent";

/** Newton on x = 1/√f: x + 2 log10(ε/3.7 + 2.51 x / Re) = 0. Convex and falling towards the root, so it settles in a few steps. */
function colebrookRoot(reynolds: number, relativeRoughness: number): number {
  const [rough, smooth] = [relativeRoughness / 3.7, 2.51 / reynolds];
  let x = 7;
  for (let step = 0; step < 30; step++) {
    const inside = rough + smooth * x;
    const change = (x + 2 * Math.log10(inside)) / (1 + ((2 / Math.LN10) * smooth) / inside);
    x -= change;
    if (Math.abs(change) < 1e-15 * x) break;
  }
  return x;
}

/**
 * Darcy's friction factor, without unit, by Colebrook:
 *
 *   1/√f = −2 log10( e/(3.7 D) + 2.51/(Re √f) )
 *
 * e/D  roughness over bore, `relativeRoughness`, 0 for a smooth wall
 * Re   Reynolds number, `reynolds`
 *
 * Below Re 2000 it is 64/Re. Accuracy: the equation is solved to the last digits; it describes pipe to some 3 % (from memory).
 */
export function frictionFactor(reynolds: number, relativeRoughness: number): Outcome<number> {
  const bad = unfit("friction", "positive", { reynolds }) ?? unfit("friction", "not negative", { relativeRoughness });
  if (bad) return bad;
  if (reynolds < LAMINAR_BELOW) return ok(64 / reynolds);
  return ok(1 / colebrookRoot(reynolds, relativeRoughness) ** 2);
}

export interface DarcyPipe {
  /** Metres. */
  readonly length: Uncertain;
  readonly bore: Uncertain;
  /** Roughness height, metres; smooth plastic where absent. */
  readonly roughness?: number;
  /** Kinematic viscosity, m²/s; water at 20 °C where absent. */
  readonly viscosity?: number;
}

export interface DarcyLoss {
  /** Metres of water. */
  readonly head: Uncertain;
  readonly reynolds: number;
  readonly frictionFactor: number;
  readonly regime: FlowRegime;
}

const reynoldsOf = (flow: number, bore: number, viscosity: number): number => (4 * flow) / (Math.PI * bore * viscosity);

function headOf(flow: number, bore: number, length: number, roughness: number, viscosity: number): number {
  const reynolds = reynoldsOf(flow, bore, viscosity);
  const factor = reynolds < LAMINAR_BELOW ? 64 / reynolds : 1 / colebrookRoot(reynolds, roughness / bore) ** 2;
  const velocity = (4 * flow) / (Math.PI * bore * bore);
  return (factor * (length / bore) * velocity * velocity) / (2 * GRAVITY);
}

/**
 * Head that friction takes, metres of water, by Darcy-Weisbach: hf = f (L/D) V²/(2g), f by `frictionFactor`. The independent second
 * beside Hazen-Williams: it needs no C, knows the water's temperature, and says when the flow is not turbulent.
 * Source: Crane TP-410 (quoted). For smooth plastic at 20 °C it lies −2.6 to +4.4 % from Hazen-Williams with C = 150.
 */
export function darcyLoss(flow: Uncertain, pipe: DarcyPipe): Outcome<DarcyLoss> {
  const { length, bore, roughness = SMOOTH_PLASTIC_ROUGHNESS, viscosity = WATER_VISCOSITY_20C } = pipe;
  const bad = unfit("friction", "positive", { flow, bore, viscosity }) ?? unfit("friction", "not negative", { length, roughness });
  if (bad) return bad;
  const reynolds = reynoldsOf(flow.value, bore.value, viscosity);
  const factor = frictionFactor(reynolds, roughness / bore.value);
  if (!factor.ok) return factor;
  const head = throughSteps({ flow, bore, length }, (at) => headOf(at.flow, at.bore, at.length, roughness, viscosity));
  return ok({
    head,
    reynolds,
    frictionFactor: factor.value,
    regime: regimeAt(reynolds),
  });
}
