export type { LengthUnit } from "../units/index.ts";
export { type DayAsked, type DayOrder, type DayTyped, dayOrders, readDay } from "./day.ts";
export { type LengthReading, readLength } from "./length.ts";
export { type QuantityAsked, type QuantityReading, readQuantity } from "./quantity.ts";
export { LONGEST_TEXT, type ReadingOptions } from "./scan.ts";
