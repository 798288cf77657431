export { type CalendarDay, calendarDay, dayNumber, daysInMonth, instantText, isoDay, typedDay } from "./calendar.ts";
export { formatLength, type LengthTextOptions } from "./length-text.ts";
export { type LocalMoment, momentIn } from "./local-moment.ts";
export * from "./quantities.ts";
export { formatQuantity, type UnitPreferences } from "./quantity-text.ts";
export { nearest } from "./rounding.ts";
export { type LengthUnit, type TapeMarks, type TradeUnit, tapeMarks, tradeUnits, type UnitSymbol } from "./trade-units.ts";
export { type WallClock, zonedText } from "./zone-instant.ts";
