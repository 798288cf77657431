import { type Figures, type Outcome, type RefusalCode, refuse } from "../outcome/index.ts";
import { type Token, tokens } from "./tokens.ts";

/** Longest text that is looked at. Own choice: the longest honest reading has about thirty characters. */
export const LONGEST_TEXT = 64;

/** One typed text while it is being read. */
export interface Scan {
  readonly typed: string;
  readonly place: string;
  readonly tokens: readonly Token[];
}

export interface ReadingOptions {
  /** Whether a sign (above and below a mark) may be typed. */
  readonly signed?: boolean;
  /** The place that a refusal names; `typed` where nothing is said. */
  readonly place?: string;
}

type Refused = ReturnType<typeof refuse>;

/** The text as it stands between two columns; what a message quotes. */
const quoted = (scan: Scan, from: number, to: number): string =>
  scan.typed
    .slice(from - 1, to - 1)
    .trim()
    .replace(/\p{Cs}/gu, "\uFFFD");

/** Refuses at token `index` (past the end: at the column after the text), quoting from there up to token `last`, or that token alone. */
export function refuseAt(scan: Scan, code: RefusalCode, index: number, last = index, figures: Figures = {}): Refused {
  const token = scan.tokens[index];
  const column = token?.column ?? scan.tokens.at(-1)?.end ?? 1;
  const found = token === undefined ? "" : quoted(scan, token.column, scan.tokens[last]?.end ?? scan.typed.length + 1);
  return refuse(code, scan.place, { found, ...figures }, column);
}

/** Like `refuseAt`, with all that stands from there to the end quoted. */
export const refuseFrom = (scan: Scan, code: RefusalCode, index: number, figures: Figures = {}): Refused =>
  refuseAt(scan, code, index, scan.tokens.length - 1, figures);

export function scanned(typed: string, options: ReadingOptions): Outcome<Scan> {
  const place = options.place ?? "typed";
  if (typed.length > LONGEST_TEXT) {
    return refuse("reading-out-of-range", place, { length: typed.length, longest: LONGEST_TEXT }, LONGEST_TEXT + 1);
  }
  const cut = tokens(typed);
  if (cut.length === 0) return refuse("reading-empty", place, {}, 1);
  return { ok: true, value: { typed, place, tokens: cut } };
}

export interface Sign {
  readonly negative: boolean;
  readonly next: number;
}

/** A sign at the start covers the whole reading. A dash that is no minus sign of a keyboard must touch what it covers. */
export function signAt(scan: Scan, signed: boolean): Outcome<Sign> {
  const first = scan.tokens[0];
  const second = scan.tokens[1];
  if (first === undefined || !(first.kind === "hyphen" || first.kind === "dash" || first.kind === "plus")) {
    return { ok: true, value: { negative: false, next: 0 } };
  }
  if (second === undefined) return refuseAt(scan, "reading-not-understood", 0);
  const keyboardSign = first.kind === "plus" || "-−﹣－".includes(first.text);
  if (!keyboardSign && (first.kind === "dash" || first.end !== second.column)) return refuseAt(scan, "reading-not-understood", 0);
  if (!signed) return refuseAt(scan, "reading-sign", 0);
  if (second.kind === "hyphen" || second.kind === "dash" || second.kind === "plus") return refuseAt(scan, "reading-sign", 1);
  return { ok: true, value: { negative: first.kind !== "plus", next: 1 } };
}
