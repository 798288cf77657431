import { faultIn, quotient, refused, subtract, type Uncertain } from "../doubt/index.ts";
import { type Outcome, ok } from "../outcome/index.ts";

/**
 * What the basin has beyond the water in transit.
 *
 *   R = V_u / V_t        V_r = V_u - V_t        t_a = V_r / (Q - Q_b)        n = V_r / E
 *
 *   V_u  usable water at rest, m³ (`usable`)      V_t  water in transit, m³ (`inTransit`)
 *   R    reserve ratio (`ratio`); 2 to 3 is common practice, the company sets its own
 *   V_r  what is left above the intake while it runs, m³ (`left`)
 *   Q    flow, m³/s; Q_b the part that comes back to the basin, m³/s
 *   t_a  time until the intake draws air, s
 *   E    loss a day, m³ (`lossPerDay`); n days without make-up water
 *
 * Source: own; ratio common practice, no source.
 */
export interface Reserve {
  readonly ratio: Uncertain;
  readonly left: Uncertain;
  readonly answer: "intake stays covered" | "intake draws air";
}

/** Reserve ratio and what is left while running. Refuses water that is not above zero. */
export function reserve(usable: Uncertain, inTransit: Uncertain): Outcome<Reserve> {
  const fault = faultIn("basin", { usable: [usable, "positive"], inTransit: [inTransit, "positive"] });
  if (fault) return refused(fault);
  const left = subtract(usable, inTransit);
  return ok({ ratio: quotient(usable, inTransit), left, answer: left.value > 0 ? "intake stays covered" : "intake draws air" });
}

export type TimeUntilAir =
  | { readonly answer: "draws air after"; readonly seconds: Uncertain }
  | { readonly answer: "all comes back" }
  | { readonly answer: "draws air at once" };

/**
 * Time until the intake draws air, with `available` m³ above it, while `flow` m³/s leaves and `comesBack` m³/s returns. Before the
 * falls run, nothing comes back and the usable water is what is available; with a broken edge, the left of the reserve.
 */
export function timeUntilAir(available: Uncertain, flow: Uncertain, comesBack: Uncertain): Outcome<TimeUntilAir> {
  const fault = faultIn("basin", {
    available: [available, "finite"],
    flow: [flow, "positive"],
    comesBack: [comesBack, "not negative"],
  });
  if (fault) return refused(fault);
  if (available.value <= 0) return ok({ answer: "draws air at once" });
  const away = subtract(flow, comesBack);
  return ok(away.value <= 0 ? { answer: "all comes back" } : { answer: "draws air after", seconds: quotient(available, away) });
}

/** Time to fill falls, stream, pools and pipe at start-up, seconds: the intake must stay covered for longer than this. */
export function timeToFill(inTransit: Uncertain, flow: Uncertain): Outcome<Uncertain> {
  const fault = faultIn("basin", { inTransit: [inTransit, "not negative"], flow: [flow, "positive"] });
  return fault ? refused(fault) : ok(quotient(inTransit, flow));
}

export type DaysWithoutMakeUp =
  | { readonly answer: "lasts"; readonly days: Uncertain }
  | { readonly answer: "nothing left" }
  | { readonly answer: "no loss" };

/** Days until the intake draws air while running without make-up water, at a loss in m³ a day (evaporation, splash, leak). */
export function daysWithoutMakeUp(left: Uncertain, lossPerDay: Uncertain): Outcome<DaysWithoutMakeUp> {
  const fault = faultIn("basin", { left: [left, "finite"], lossPerDay: [lossPerDay, "finite"] });
  if (fault) return refused(fault);
  if (left.value <= 0) return ok({ answer: "nothing left" });
  return ok(lossPerDay.value <= 0 ? { answer: "no loss" } : { answer: "lasts", days: quotient(left, lossPerDay) });
}
