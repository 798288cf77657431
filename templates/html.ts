/** Text that is already HTML. Only `html` and `trusted` make it, so a plain text can never pass for it. */
export class Html {
  readonly text: string;
  constructor(text: string) {
    this.text = text;
  }
}

export type Piece = string | number | Html | undefined | null | false | readonly Piece[];

const entities: Readonly<Record<string, string>> = { "&": "&amp;", "<": "&lt;", ">": "&gt;", '"': "&quot;", "'": "&#39;" };

// C0 and C1 controls and unpaired surrogates have no glyph and would break the page's XML-like parts; the sign for
// 'not a character' is printed in their place, so that nothing vanishes without a word.
// biome-ignore lint/suspicious/noControlCharactersInRegex: finding them is the point
const unprintable = /[\u0000-\u0008\u000b\u000c\u000e-\u001f\u007f-\u009f\ufffe\uffff]|[\ud800-\udbff](?![\udc00-\udfff])|(?<![\ud800-\udbff])[\udc00-\udfff]/g;

/** Escapes for text and for quoted attributes alike. */
export const escaped = (text: string): string => text.replace(unprintable, "\ufffd").replace(/[&<>"']/g, (sign) => entities[sign] as string);

const written = (piece: Piece): string => {
  if (piece === undefined || piece === null || piece === false) return "";
  if (piece instanceof Html) return piece.text;
  if (Array.isArray(piece)) return piece.map(written).join("");
  return escaped(String(piece));
};

/** Tagged template: everything put in is escaped, lists are joined, nothing stands for nothing. */
export const html = (strings: TemplateStringsArray, ...pieces: readonly Piece[]): Html =>
  new Html(strings.reduce((text, part, at) => text + written(pieces[at - 1]) + part));

/** For text that the templates write themselves: style sheets and drawings. Never for what somebody typed. */
export const trusted = (text: string): Html => new Html(text);

/** A CSS string for `content`, safe inside a `style` element: every sign that could end string, rule or element as an escape. */
export const cssString = (text: string): string =>
  `"${text.replace(unprintable, "\ufffd").replace(/[^\p{L}\p{N} .,;:·–′″+-]/gu, (sign) => `\\${(sign.codePointAt(0) as number).toString(16)} `)}"`;
