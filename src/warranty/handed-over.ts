import type { CalendarDay } from "../units/index.ts";
import type { Handing, WarrantyClocks } from "./clocks.ts";
import { daysLater, earliest } from "./days.ts";
import type { WarrantyTerms } from "./terms.ts";

/** How and when the work was handed over. */
export interface HandedOver {
  readonly how: "signed" | "delivered without signature" | "accepted by use";
  readonly day: CalendarDay;
  readonly entry: string;
  readonly because?: Handing["because"];
  readonly objection?: string;
}

/**
 * The first of: signed, delivered without a signature, accepted by use after the days that the company's terms name. By use
 * only where they name some and no objection was entered. Undefined: not handed over, and not on its way.
 */
export function handedOver(clocks: WarrantyClocks, { acceptedByUseAfterDays: days }: Pick<WarrantyTerms, "acceptedByUseAfterDays">) {
  const { used, objections, handings } = clocks;
  const byUse: readonly HandedOver[] =
    used === undefined || days === undefined || objections.length > 0
      ? []
      : [{ how: "accepted by use", day: daysLater(used.day, days), entry: used.entry }];
  return earliest<HandedOver>([...handings, ...byUse]);
}
