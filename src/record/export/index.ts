export { type Cell, CSV_MARK, csvLine } from "./csv.ts";
export { type ExportTable, exportHeads, exportRows, exportTables, type JobExported } from "./tables.ts";
