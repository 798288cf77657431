export { archiveDrawn, peopleOf } from "./archive.ts";
export { companyFrom, type Drawing, today } from "./draw.ts";
export { type Effects, planted, plantedWords } from "./effects.ts";
export { entriesOf, idFrom, type Scripted } from "./entries.ts";
export { factsOf } from "./facts.ts";
export { ledgerDrawn, versionsDrawn } from "./ledger.ts";
export { runCompanies } from "./run.ts";
export { questionsSheet } from "./sheet.ts";
