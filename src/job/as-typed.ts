/** A letter or a mark of feet, inches or degrees: the unit was typed with the number. */
const hasUnit = /[\p{L}°%'"‘’“”′″]/u;

/** A reading as it was typed; the unit beside it only where none was typed. */
export function asTyped(typed: string, unit: string): string {
  // feet were named and the inches after them were not
  if (unit === "ft-in" && /(ft|feet|foot|pies?|['‘’′])\s*\d[\d\s/.]*$/i.test(typed)) return `${typed.trimEnd()} in`;
  if (hasUnit.test(typed) || unit === "" || unit === "1") return typed;
  return `${typed} ${unit === "ft-in" ? "in" : unit}`;
}
