export {
  type AboutToBeBuried,
  aboutToBeBuried,
  type BuriedKind,
  type BuriedLine,
  buriedKinds,
  isToDecide,
} from "./about-to-be-buried.ts";
export { admit } from "./admit.ts";
export * from "./ahead/index.ts";
export { asTyped } from "./as-typed.ts";
export { isBeforeRecord } from "./before-record.ts";
export * from "./callbacks/index.ts";
export * from "./cards/index.ts";
export { clearance, clearances } from "./clearance.ts";
export { standingOf } from "./clears.ts";
export { coveredOf } from "./covered.ts";
export * from "./design/index.ts";
export * from "./fact.ts";
export { type Design, type FigureSource, figureAsked, figureValue, type KitCard, switchOn } from "./figures.ts";
export * from "./finding.ts";
export { findings, findingsOn } from "./findings.ts";
export { entryOf, jobLedgerOf } from "./from-ledger.ts";
export { beforehandOf, handingOver, leftToDoFor } from "./handing-over.ts";
export { askedItems, designFor, isEntered } from "./instances.ts";
export { isInstant, type Live, ofItsJob, whatOf } from "./live.ts";
export { askedOf, measured } from "./measured.ts";
export { type MomentFound, momentOf } from "./moments.ts";
export { jobWho, siteMarks } from "./particulars.ts";
export * from "./photo-scale/index.ts";
export * from "./picture-facts/index.ts";
export { isReadAgainAsked, type ReadAgain, readAgainDue } from "./read-again.ts";
export { type ReworkAsked, reworkAsked, reworkAskedOf } from "./rework-asked.ts";
export { RULES } from "./rules.ts";
export { type Instance, type Series, seriesOf } from "./series.ts";
export * from "./sheet.ts";
export { sheetFaults } from "./sheet-faults.ts";
export { usualUncertainty } from "./sheet-limits.ts";
export { readSheet } from "./sheet-reading.ts";
export { type SiteMark, type SitePlaced, sitePlaced } from "./site-placed.ts";
export { designAt, factsOf, type JobLedger, type JobState, jobState, type Tag } from "./state.ts";
export * from "./table/index.ts";
export type { TiedThing, TieTaken } from "./tied-things.ts";
export * from "./versions/index.ts";
export { type PhoneVisit, phoneVisits, recordBeforeMove, withCorrections } from "./visits.ts";
export { type Writer, writers } from "./writers.ts";
