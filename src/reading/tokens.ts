/**
 * Typed text cut into tokens, each with the column where it begins, so that a refusal can point at it. Every spelling that
 * phones make of a mark (curly, prime, full width) becomes one token kind here; nothing is normalised away before that.
 */
export type TokenKind =
  | "number" // ASCII digits with whatever points and commas stand between them
  | "fraction" // one sign for a whole fraction: ½
  | "one-over" // ⅟
  | "slash"
  | "hyphen" // joins whole and fraction, or is a minus at the start
  | "dash" // a true minus or a long dash: never joins
  | "plus"
  | "foot"
  | "inch"
  | "point"
  | "comma"
  | "colon"
  | "word"
  | "other";

export interface Token {
  readonly kind: TokenKind;
  /** As it stands in the text, with a lone half of a surrogate pair replaced. */
  readonly text: string;
  /** 1-based column of the first character, and the column after the last, in UTF-16 units as phones count. */
  readonly column: number;
  readonly end: number;
}

const signs: ReadonlyArray<readonly [TokenKind, string]> = [
  ["fraction", "½¼¾⅛⅜⅝⅞⅓⅔⅕⅖⅗⅘⅙⅚⅐⅑⅒↉"],
  ["one-over", "⅟"],
  ["slash", "/⁄∕／"],
  ["hyphen", "-‐‑‒–﹣－"],
  ["dash", "−—―"],
  ["plus", "+＋"],
  ["foot", "'’‘‛′´`ʹʼˈ＇"],
  ["inch", '"”“„‟″ʺ˝〃＂'],
  ["point", "."],
  ["comma", ","],
  ["colon", ":"],
];
const signKinds = new Map<string, TokenKind>(
  signs.flatMap(([kind, characters]) => [...characters].map((character) => [character, kind] as const)),
);

/** Blanks of every width, and marks that show nothing: those part two tokens too, so that no two digits meet unseen. */
const blank = /^[\s\u180E\u200B-\u200F\u202A-\u202E\u2060-\u2069\p{Variation_Selector}]+/u;
const digits = /^[0-9]+(?:[.,][0-9]+)*/;
const word = /^[\p{L}\p{M}]+/u;

export function tokens(typed: string): readonly Token[] {
  const found: Token[] = [];
  let at = 0;
  const take = (kind: TokenKind, length: number) => {
    const text = typed.slice(at, at + length).replace(/\p{Cs}/gu, "\uFFFD");
    const last = found.at(-1);
    if (kind === "foot" && last?.kind === "foot" && last.end === at + 1) {
      found[found.length - 1] = { kind: "inch", text: last.text + text, column: last.column, end: at + length + 1 };
    } else {
      found.push({ kind, text, column: at + 1, end: at + length + 1 });
    }
    at += length;
  };
  while (at < typed.length) {
    const rest = typed.slice(at);
    const character = String.fromCodePoint(rest.codePointAt(0) ?? 0);
    const sign = signKinds.get(character);
    const blanks = blank.exec(rest)?.[0];
    if (blanks !== undefined) at += blanks.length;
    else if (sign !== undefined) take(sign, character.length);
    else {
      const number = digits.exec(rest)?.[0];
      const letters = word.exec(rest)?.[0];
      if (number !== undefined) take("number", number.length);
      else if (letters !== undefined) take("word", wordLength(letters));
      else take("other", character.length);
    }
  }
  return found;
}

/** A prime that Unicode counts as a letter ends a word. */
function wordLength(letters: string): number {
  let length = 0;
  for (const character of letters) {
    if (signKinds.has(character)) break;
    length += character.length;
  }
  return length;
}

/** Whether nothing at all stands between the two. */
export const touch = (left: Token | undefined, right: Token | undefined): boolean =>
  left !== undefined && right !== undefined && left.end === right.column;
