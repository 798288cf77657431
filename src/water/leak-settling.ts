import { contributors, expanded, faultIn, refused, subtract, total, type Uncertain } from "../doubt/index.ts";
import { type Outcome, ok } from "../outcome/index.ts";
import type { LeakLoss } from "./leak-test.ts";

/**
 * How long a leak test must run to be called.
 *
 *   U(T)² = 4 Σ (f_i T_0/T + s_i)²  ≤  (L_max - L)²
 *
 *   L, L_max  loss a day and the company's limit, m³        T_0, T  length of the test as it was and as it would settle it
 *   f_i, s_i  the doubt of L by source: what fades with time (tape, mark, clock), what stays (areas, evaporation)
 *
 * The loss is taken to stay as it is. Source: own. Only + − × ÷ and a square root.
 */
export type Settling =
  | { readonly answer: "settled" }
  /** `seconds`: length of the whole test that would settle it; `further`: what is to come. */
  | { readonly answer: "too close to call"; readonly seconds: number; readonly further: number }
  /** No length of test settles it: the doubt that stays is too large, most of it from `source`. */
  | { readonly answer: "time will not settle it"; readonly source?: string };

const MILLILITRES_PER_CUBIC_METRE = 1e6;
const inMillilitres = (cubicMetres: number): number => Math.round(cubicMetres * MILLILITRES_PER_CUBIC_METRE);

/** Called as a verdict is: on whole millilitres, inside up to the limit itself, outside only when clear of it. */
function isCalled(room: number, U: number): boolean {
  return room >= U || -room > U;
}

const sumOfProducts = (a: Uncertain, b: Uncertain): number =>
  total([...a.parts].map(([source, part]) => part * (b.parts.get(source) ?? 0)));

/** Whether the loss can be told from the limit (m³ a day), and if not how long the test would have to be. */
export function leakSettling(loss: LeakLoss, limitPerDay: number): Outcome<Settling> {
  const fault = faultIn("leakTest", {
    lossPerDay: [loss.lossPerDay, "finite"],
    seconds: [loss.seconds, "positive"],
    limitPerDay: [limitPerDay, "not negative"],
  });
  if (fault) return refused(fault);
  const room = inMillilitres(limitPerDay) - inMillilitres(loss.lossPerDay.value);
  if (isCalled(room, inMillilitres(expanded(loss.lossPerDay)))) return ok({ answer: "settled" });
  const stays = subtract(loss.lossPerDay, loss.fading);
  const [a, b] = [sumOfProducts(loss.fading, loss.fading), sumOfProducts(loss.fading, stays)];
  const missing = sumOfProducts(stays, stays) - (room * room) / (4 * MILLILITRES_PER_CUBIC_METRE * MILLILITRES_PER_CUBIC_METRE);
  // Where what stays is already wider than the room, no time helps.
  if (missing >= 0 || a === 0) {
    const source = contributors(stays, 1)[0]?.source;
    return ok(source === undefined ? { answer: "time will not settle it" } : { answer: "time will not settle it", source });
  }
  const share = (Math.sqrt(b * b - a * missing) - b) / a;
  const seconds = Math.max(loss.seconds, loss.seconds / share);
  return ok({ answer: "too close to call", seconds, further: seconds - loss.seconds });
}
