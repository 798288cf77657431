import type { Json } from "../../../ledger/index.ts";

/** The number to call the office by, as the company's settings have it. */
export function officeNumber(settings: Json | undefined): string | undefined {
  if (typeof settings !== "object" || settings === null || Array.isArray(settings)) return undefined;
  const { officeTelephone } = settings as { readonly officeTelephone?: Json };
  return typeof officeTelephone === "string" && officeTelephone.trim() !== "" ? officeTelephone.trim() : undefined;
}
