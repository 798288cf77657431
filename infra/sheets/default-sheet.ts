import { readSheet, type ToleranceSheet } from "#core/job/index.ts";
import type { Json } from "#core/ledger/index.ts";
import file from "./buried-basin.json" with { type: "json" };

/** The default tolerance sheet as it lies in its file. */
export const defaultSheetJson: Json = file as unknown as Json;

/** The default tolerance sheet, its shape and names checked. */
export function defaultSheet(): ToleranceSheet {
  const sheet = readSheet(defaultSheetJson);
  if (!sheet.ok) throw new Error(`the default sheet does not read: ${sheet.refusal.code} at ${sheet.refusal.place}`);
  return sheet.value;
}
