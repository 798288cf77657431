export { type Budget, budgetOf, everydayLimits, everydayTags } from "./budget.ts";
export { defaultSheet, defaultSheetJson } from "./default-sheet.ts";
