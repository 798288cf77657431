/** Whether the record's fonts have a glyph for a code point in every weight. */
export type HasGlyph = (sign: number) => boolean;

// Joiners, variation selectors and white space draw nothing and need no glyph.
const DRAWS_NOTHING = /[\p{Default_Ignorable_Code_Point}\s]/u;

const printableText = (text: string, has: HasGlyph): string =>
  [...text].map((sign) => (has(sign.codePointAt(0) as number) || DRAWS_NOTHING.test(sign) ? sign : named(sign))).join("");

const named = (sign: string): string => {
  const code = sign.codePointAt(0) as number;
  // Controls and halves of a pair are no signs at all; the templates have a mark for them.
  if (/[\p{Cc}\p{Cs}]/u.test(sign)) return sign;
  return `[U+${code.toString(16).toUpperCase().padStart(4, "0")}]`;
};

/**
 * The same value with every sign that the fonts lack written as its number, `[U+2192]`: the browser would draw it in
 * whatever the machine has, or as an empty box that is missing from the PDF's text without a word.
 */
export function printable<T>(value: T, has: HasGlyph): T {
  if (typeof value === "string") return printableText(value, has) as T;
  if (Array.isArray(value)) return value.map((item: unknown) => printable(item, has)) as T;
  if (typeof value !== "object" || value === null) return value;
  return Object.fromEntries(Object.entries(value).map(([key, item]) => [key, printable(item, has)])) as T;
}
