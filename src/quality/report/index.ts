export { type ReportInput, reportModel } from "./build.ts";
export type { ReportModel } from "./report-model.ts";
