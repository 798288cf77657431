import { readSheet, type ToleranceSheet } from "#core/job/index.ts";
import type { Json } from "#core/ledger/index.ts";
import file from "./old-pond.json" with { type: "json" };

/** The tolerance sheet of an old pond that is taken over, as it lies in its file. */
export const oldPondSheetJson: Json = file as unknown as Json;

/** The same, its shape and names checked. */
export function oldPondSheet(): ToleranceSheet {
  const sheet = readSheet(oldPondSheetJson);
  if (!sheet.ok) throw new Error(`the old pond's sheet does not read: ${sheet.refusal.code} at ${sheet.refusal.place}`);
  return sheet.value;
}
