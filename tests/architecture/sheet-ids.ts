interface Sheet {
  readonly [list: string]: unknown;
}

const lists = ["steps", "items", "checks", "coverings"];

/** Ids of steps, items, checks and coverings, of at least two words: one word alone is also everyday language. */
export const sheetIds = (sheets: readonly string[]): ReadonlySet<string> => {
  const ids = new Set<string>();
  for (const text of sheets) {
    const sheet = JSON.parse(text) as Sheet;
    for (const list of lists) {
      for (const entry of (sheet[list] ?? []) as readonly { readonly id?: unknown }[]) {
        if (typeof entry.id === "string" && /^[a-z0-9]+(-[a-z0-9]+)+$/.test(entry.id)) ids.add(entry.id);
      }
    }
  }
  return ids;
};
