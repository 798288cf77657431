export { type Column, columnsOf, officeReadingsOf, placeOfColumn, type TableField, tableFields } from "./columns.ts";
export { guarded, unguarded } from "./formula.ts";
export { type LineSaid, readLine, type TableAsked } from "./line.ts";
