export { type ReportSurroundings, reportPage } from "./page.ts";
