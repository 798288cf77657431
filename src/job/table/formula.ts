/**
 * What a spreadsheet may take for a formula (OWASP, CSV injection), and the apostrophe that makes it text: one place for the tables
 * that are written and those that are read in, so that each takes away what the other sets.
 */
const SIGNS: ReadonlySet<string> = new Set("=+-@＝＋－＠");
/** A spreadsheet that takes another sign for the one between cells, or knows no quotation marks, begins a cell behind these. */
const BREAKS: ReadonlySet<string> = new Set(";\t\r\n");
const MARK = "'";

/** What may stand before a formula and be skipped: blanks, quotation marks, signs that show nothing, marks of our own. */
const PASSED = /[\s"'\u00ad\u200b-\u200f\u202a-\u202e\u2060-\u2064]/;
const BEGINS = /^(?:'*[\t\r\n]|[\s"'\u00ad\u200b-\u200f\u202a-\u202e\u2060-\u2064]*[=+\-@＝＋－＠])/;

/** Where in the text, behind a break, something begins as a formula; the marks before it belong to it. */
function formulasInside(text: string): readonly number[] {
  const found: number[] = [];
  let isFresh = false;
  let marks = -1;
  for (let i = 0; i < text.length; i += 1) {
    const sign = text[i] ?? "";
    if (isFresh && SIGNS.has(sign)) found.push(marks < 0 ? i : marks);
    if (isFresh && sign === MARK) marks = marks < 0 ? i : marks;
    else marks = -1;
    isFresh = BREAKS.has(sign) || (isFresh && PASSED.test(sign));
  }
  return found;
}

/** The text with a mark before everything in it that could be taken for a formula. */
export function guarded(text: string): string {
  let whole = "";
  let from = 0;
  for (const at of formulasInside(text)) {
    whole += `${text.slice(from, at)}${MARK}`;
    from = at;
  }
  whole += text.slice(from);
  return BEGINS.test(text) ? `${MARK}${whole}` : whole;
}

/** The text as it was before `guarded`; a text without such marks stays as it is. */
export function unguarded(text: string): string {
  const marked = text.startsWith(MARK) && BEGINS.test(text.slice(1)) ? text.slice(1) : text;
  const places = formulasInside(marked).filter((at) => marked[at] === MARK);
  let whole = "";
  let from = 0;
  for (const at of places) {
    whole += marked.slice(from, at);
    from = at + 1;
  }
  return whole + marked.slice(from);
}
