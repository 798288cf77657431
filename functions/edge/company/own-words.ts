import type { Json } from "#core/ledger/index.ts";
import { settings } from "#core/wire/index.ts";

/** What a company says in its own way on the screens, in one language; undefined where it changed nothing. */
export function ownWords(content: Json | undefined, language: "en" | "es"): Readonly<Record<string, string>> | undefined {
  const read = settings.safeParse(content);
  const words = Object.entries(read.success ? (read.data.words ?? {}) : {}).flatMap(([word, said]) => {
    const own = said[language];
    return own === undefined ? [] : [[word, own] as const];
  });
  return words.length === 0 ? undefined : Object.fromEntries(words);
}

/** Mark and colour of lines, as the screens show them. */
export function ownLook(content: Json | undefined): { readonly mark?: string; readonly line?: string } {
  const read = settings.safeParse(content);
  if (!read.success) return {};
  const { mark, colours } = read.data;
  return { ...(mark !== undefined && { mark }), ...(colours && { line: colours.lines }) };
}
