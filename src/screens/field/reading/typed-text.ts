import type { Item } from "../../../job/index.ts";
import type { ToldOnPhone } from "../told.ts";

/** A reading as it was typed; an instant as a day and time of the site. */
export function typedText({ quantity }: Pick<Item, "quantity">, typed: string, sayer: ToldOnPhone["sayer"]): string {
  const instant = quantity === "instant" ? Date.parse(typed) : Number.NaN;
  return Number.isNaN(instant) ? typed : sayer.moment(instant);
}
