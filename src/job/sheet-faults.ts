import type { Json } from "../ledger/index.ts";
import type { Refusal } from "../outcome/index.ts";
import type { ToleranceSheet } from "./sheet.ts";
import { limitFaults } from "./sheet-limits.ts";
import { shapeFaults } from "./sheet-reading.ts";

/** Every fault of a sheet, as found when it is saved. None: it may be pinned by jobs. */
export function sheetFaults(json: Json): readonly Refusal[] {
  const shape = shapeFaults(json);
  return shape.length > 0 ? shape : limitFaults(json as unknown as ToleranceSheet);
}
