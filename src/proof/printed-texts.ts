import type { RecordModel } from "../record/index.ts";
import { bare } from "./page-words.ts";

/** Fields of the view model that name something or steer how it is drawn, and are not printed themselves. */
const notPrinted = new Set(
  "words edition language paper verdict tone shown step check id photo rendition alt stroke shape anchor filled colours".split(" "),
);

/** A drawing's own title and words are for whoever cannot see it. */
const isDrawing = (value: object): boolean => "shapes" in value;

function textsIn(value: unknown, place: string, found: { place: string; text: string }[]): void {
  if (typeof value === "string") {
    if (value !== "") found.push({ place, text: value });
    return;
  }
  if (typeof value !== "object" || value === null) return;
  for (const [key, item] of Object.entries(value)) {
    if (notPrinted.has(key) || (key === "says" && isDrawing(value))) continue;
    textsIn(item, place === "" ? key : `${place}/${key}`, found);
  }
}

/** Every text that a record must show, with its place in the view model. */
export function printedTexts(model: RecordModel): readonly { readonly place: string; readonly text: string }[] {
  const found: { place: string; text: string }[] = [];
  textsIn(model, "", found);
  return found;
}

/** Whether a text stands on one page, or runs from the end of one to the next. */
function standsOn(pages: readonly string[], text: string): boolean {
  if (pages.some((page) => page.includes(text))) return true;
  return pages.some((page, at) => {
    const next = pages[at + 1];
    if (next === undefined) return false;
    let most = Math.min(text.length - 1, page.length);
    // as much as the page ends with; the running strip stands at the beginning of pages
    while (most > 0 && !page.endsWith(text.slice(0, most))) most -= 1;
    return most > 0 && next.includes(text.slice(most));
  });
}

/** Texts of the view model that no page shows. */
export function notShown(model: RecordModel, pages: readonly string[]): readonly { readonly place: string; readonly text: string }[] {
  const plain = pages.map(bare);
  const whole = plain.join("");
  const known = new Map<string, boolean>();
  return printedTexts(model).filter(({ text }) => {
    const wanted = bare(text);
    let shown = known.get(wanted);
    if (shown === undefined) {
      shown = whole.includes(wanted) || standsOn(plain, wanted);
      known.set(wanted, shown);
    }
    return !shown;
  });
}
