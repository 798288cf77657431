export { type BackupFault, type Checked, checkBackup } from "./check.ts";
export { type BackupList, DAY_MS, databasesOf, KEPT_DAYS } from "./list.ts";
export { NotRestored, type Restored, type RestorePlan, restoreBackup } from "./restore.ts";
export { type BackupPlan, type Taken, takeBackup } from "./take.ts";
