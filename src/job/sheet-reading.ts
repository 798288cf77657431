import type { Json } from "../ledger/index.ts";
import { type Outcome, ok, type Refusal } from "../outcome/index.ts";
import type { ToleranceSheet } from "./sheet.ts";
import { nameFaults } from "./sheet-names.ts";
import { sheetShape } from "./sheet-shape.ts";

/** Every fault of a sheet's shape, or else of its names; forms and limits are judged besides by `sheetFaults`. */
function shapeFaults(json: Json): readonly Refusal[] {
  const shape = sheetShape(json, "sheet");
  return shape.length > 0 ? shape : nameFaults(json as unknown as ToleranceSheet);
}

const known = new WeakMap<object, Outcome<ToleranceSheet>>();

function read(json: Json): Outcome<ToleranceSheet> {
  const [fault] = shapeFaults(json);
  return fault ? { ok: false, refusal: fault } : ok(json as unknown as ToleranceSheet);
}

/** A tolerance sheet from its file: the sheet, or the first fault of shape or names. The same object is read once. */
export function readSheet(json: Json): Outcome<ToleranceSheet> {
  if (typeof json !== "object" || json === null) return read(json);
  const before = known.get(json);
  if (before) return before;
  const outcome = read(json);
  known.set(json, outcome);
  return outcome;
}
