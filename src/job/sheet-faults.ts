import type { Json } from "../ledger/index.ts";
import type { Refusal } from "../outcome/index.ts";
import type { ToleranceSheet } from "./sheet.ts";
import { formFaults } from "./sheet-forms.ts";
import { limitFaults } from "./sheet-limits.ts";
import { nameFaults } from "./sheet-names.ts";
import { sheetShape } from "./sheet-shape.ts";

const within = (place: string, whole: string): boolean => place === whole || place.startsWith(`${whole}/`);

/**
 * Every fault of a sheet, as found when it is saved. None: it may be pinned by jobs. What a check comes to is not known while
 * names are at fault, or the form of the check itself or of an item that it reads: its limits are judged when those are right.
 */
export function sheetFaults(json: Json): readonly Refusal[] {
  const shape = sheetShape(json, "sheet");
  if (shape.length > 0) return shape;
  const sheet = json as unknown as ToleranceSheet;
  const names = nameFaults(sheet);
  const forms = formFaults(sheet);
  if (names.length > 0) return [...names, ...forms];
  const atFault = (whole: string): boolean => forms.some(({ place }) => within(place, whole));
  const sound = sheet.checks.filter(
    ({ id, items, minus = [] }) => !atFault(`sheet/checks/${id}`) && ![...items, ...minus].some((item) => atFault(`sheet/items/${item}`)),
  );
  return [...forms, ...limitFaults({ ...sheet, checks: sound })];
}
