export { type Budget, budgetOf, everydayLimits, everydayTags } from "./budget.ts";
export { defaultSheet, defaultSheetJson } from "./default-sheet.ts";
export { oldPondSheet, oldPondSheetJson } from "./old-pond-sheet.ts";
