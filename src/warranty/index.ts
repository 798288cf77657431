export { type Calendar, type CalendarEvent, calendarFile } from "./calendar-file.ts";
export { type Handing, type OnDay, type WarrantyClocks, warrantyClocks } from "./clocks.ts";
export { type Cover, coversOf, type Registration, type Replaced } from "./covers.ts";
export { dayAt, daysBetween, daysLater, isAfter, lastDayOfCover } from "./days.ts";
export { type HandedOver, handedOver } from "./handed-over.ts";
export { type WarrantyPlan, warrantyPlan } from "./plan.ts";
export { type ServiceDue, servicesDue } from "./services.ts";
export { type CoverStanding, standingOn } from "./standing.ts";
export * from "./terms.ts";
