import { type Check, itemNamed, type ToleranceSheet } from "../../../job/index.ts";

/** Whether a check's places are read one after the other from one standing of an instrument. */
export const isSetUp = (sheet: ToleranceSheet | undefined, { items }: Pick<Check, "items">): boolean =>
  sheet !== undefined && items.length > 1 && items.every((id) => itemNamed(sheet, id)?.inSetUp === true);
