/** Words of a company's thing, as the edge gives its title, in the reader's language. */
export function wordsIn(title: unknown, language: "en" | "es"): string {
  const words = (title ?? {}) as { readonly en?: string; readonly es?: string };
  return words[language] ?? words.en ?? "";
}
