import { faultIn, product, quotient, refused, scale, subtract, type Uncertain } from "../doubt/index.ts";
import { type Outcome, ok } from "../outcome/index.ts";

/**
 * Rain that the lined area gathers, against the room in the basin.
 *
 *   V_f = a f [- V_t]        P = V_f / A        n = V_f / (A p - E)
 *
 *   a    water per depth, m³ per m (`perDepth`)      f  freeboard: water to the place it leaves by, m (`freeboard`)
 *   V_t  water in transit, m³: comes back when the pump stops, so it counts where f was read while running (`comesBack`)
 *   A    lined area that drains into the basin, the basin with it, m² (`linedArea`)
 *   P    rain that fills it, m (`rainToOverflow`)      p  rain a day, m      E  loss a day, m³
 *   n    days to overflow
 *
 * Range: all rain on the liner runs in, none from beyond its edge (a slope above it brings more). Source: own.
 */
export interface OverflowFacts {
  readonly perDepth: Uncertain;
  readonly freeboard: Uncertain;
  readonly linedArea: Uncertain;
  readonly comesBack?: Uncertain;
}

export type Overflow =
  | { readonly answer: "room for rain"; readonly room: Uncertain; readonly rainToOverflow: Uncertain }
  /** The water that comes back when the pump stops is already more than the freeboard holds. */
  | { readonly answer: "overflows when the pump stops"; readonly room: Uncertain };

/** Room above the water and the rain that fills it. */
export function overflow({ perDepth, freeboard, linedArea, comesBack }: OverflowFacts): Outcome<Overflow> {
  const fault = faultIn("overflow", {
    perDepth: [perDepth, "positive"],
    freeboard: [freeboard, "not negative"],
    linedArea: [linedArea, "positive"],
    comesBack: [comesBack, "not negative"],
  });
  if (fault) return refused(fault);
  const above = product(perDepth, freeboard);
  const room = comesBack === undefined ? above : subtract(above, comesBack);
  if (room.value < 0) return ok({ answer: "overflows when the pump stops", room });
  return ok({ answer: "room for rain", room, rainToOverflow: quotient(room, linedArea) });
}

export type DaysToOverflow =
  | { readonly answer: "overflows after"; readonly days: Uncertain }
  | { readonly answer: "loses more than it rains" };

/** Days to overflow at `rainPerDay` metres a day and a loss of `lossPerDay` m³ a day (absent: none). `room` from `overflow`. */
export function daysToOverflow(
  room: Uncertain,
  linedArea: Uncertain,
  rainPerDay: Uncertain,
  lossPerDay?: Uncertain,
): Outcome<DaysToOverflow> {
  const fault = faultIn("overflow", {
    room: [room, "not negative"],
    linedArea: [linedArea, "positive"],
    rainPerDay: [rainPerDay, "not negative"],
    lossPerDay: [lossPerDay, "not negative"],
  });
  if (fault) return refused(fault);
  const gathers = product(linedArea, rainPerDay);
  const gain = subtract(gathers, lossPerDay ?? scale(gathers, 0));
  return ok(gain.value <= 0 ? { answer: "loses more than it rains" } : { answer: "overflows after", days: quotient(room, gain) });
}
