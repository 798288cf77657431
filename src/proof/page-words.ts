import { shownText } from "../text/index.ts";

/** As much of a reader of PDF files as is needed for the words of its pages. */
export interface PagedDocument {
  readonly numPages: number;
  getPage(number: number): Promise<{ getTextContent(): Promise<{ readonly items: readonly object[] }> }>;
}

interface Piece {
  readonly str?: string;
  readonly hasEOL?: boolean;
}

/** The words of every page in the order in which the file draws them, white space as single blanks. */
export async function pageWords(document: PagedDocument): Promise<readonly string[]> {
  const pages: string[] = [];
  for (let number = 1; number <= document.numPages; number += 1) {
    const { items } = await (await document.getPage(number)).getTextContent();
    const pieces = items.map((item: Piece) => (item.str === undefined ? "" : `${item.str}${item.hasEOL ? "\n" : ""}`));
    pages.push(pieces.join("").replace(/\s+/g, " ").trim());
  }
  return pages;
}

/** Without what differs between readers: blanks, joiners, the way in which a sign is composed. */
export const bare = (text: string): string =>
  // print leaves out what would make a page read otherwise than it was typed
  shownText(text)
    .normalize("NFKC")
    // print writes a sign that its fonts lack by its number
    .replace(/\[U\+([0-9A-F]{4,6})\]/g, (named, code: string) => {
      const point = Number.parseInt(code, 16);
      return point <= 0x10ffff && !(point >= 0xd800 && point <= 0xdfff) ? String.fromCodePoint(point).normalize("NFKC") : named;
    })
    .replace(/[\s\p{Default_Ignorable_Code_Point}\p{Cc}\p{Cs}\ufffd]+/gu, "");

/** One place where words differ, with some of those around it. */
export interface WordsChanged {
  readonly sealed: string;
  readonly found: string;
}

const AROUND = 3;
const LOOK_AHEAD = 60;
const MOST = 12;

/** Steps in both lists to the nearest place from which three words agree again. */
function rejoined(a: readonly string[], i: number, b: readonly string[], j: number): readonly [number, number] | undefined {
  const agrees = (x: number, y: number): boolean => [0, 1, 2].every((k) => a[x + k] === b[y + k]);
  for (let sum = 1; sum <= 2 * LOOK_AHEAD; sum += 1)
    for (let di = Math.max(0, sum - LOOK_AHEAD); di <= Math.min(sum, LOOK_AHEAD); di += 1) {
      const [x, y] = [i + di, j + sum - di];
      if (x <= a.length && y <= b.length && agrees(x, y)) return [x, y];
    }
  return undefined;
}

/** Where the words of a page differ from those that were sealed, at most a dozen places. Nothing where only blanks do. */
export function wordsChanged(sealed: string, found: string): readonly WordsChanged[] {
  if (bare(sealed) === bare(found)) return [];
  const [a, b] = [sealed.split(" "), found.split(" ")];
  const changed: WordsChanged[] = [];
  let [i, j] = [0, 0];
  while ((i < a.length || j < b.length) && changed.length < MOST) {
    if (a[i] === b[j]) {
      i += 1;
      j += 1;
      continue;
    }
    const [x, y] = rejoined(a, i, b, j) ?? [a.length, b.length];
    const [before, after] = [a.slice(Math.max(0, i - AROUND), i), a.slice(x, x + AROUND)];
    changed.push({
      sealed: [...before, ...a.slice(i, x), ...after].join(" "),
      found: [...before, ...b.slice(j, y), ...after].join(" "),
    });
    [i, j] = [x, y];
  }
  return changed;
}
