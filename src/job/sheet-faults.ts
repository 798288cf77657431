import type { Json } from "../ledger/index.ts";
import type { Refusal } from "../outcome/index.ts";
import type { ToleranceSheet } from "./sheet.ts";
import { formFaults } from "./sheet-forms.ts";
import { limitFaults } from "./sheet-limits.ts";
import { shapeFaults } from "./sheet-reading.ts";

/** Every fault of a sheet, as found when it is saved. None: it may be pinned by jobs. */
export function sheetFaults(json: Json): readonly Refusal[] {
  const shape = shapeFaults(json);
  if (shape.length > 0) return shape;
  const sheet = json as unknown as ToleranceSheet;
  const forms = formFaults(sheet);
  return forms.length > 0 ? forms : limitFaults(sheet);
}
