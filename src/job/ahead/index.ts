export { type GlueBefore, glueBefore } from "./glue-before.ts";
export type { MarkInUse, MarkOverGrade } from "./height-mark.ts";
export { type LeavingTonight, leavingTonight, type NightLine } from "./leaving-tonight.ts";
export { openGround } from "./open-ground.ts";
export type { Said } from "./said.ts";
export { type SetOutCard, type SetOutRow, setOutCard } from "./set-out-card.ts";
export type { SetOutReading } from "./set-out-readings.ts";
export { type Wait, type WaitLine, type WaterWhen, waterWhen } from "./water-when.ts";
export { type Located, type WhereIsEverything, whereIsEverything } from "./where-everything.ts";
