import { type Refusal, refuse } from "../outcome/index.ts";

/** An attached file as it was read: its text, and its value where it is JSON. */
export interface Attached {
  readonly text: string;
  readonly value?: unknown;
}

/** UTF-8 as text, one sign for each byte that is none. The core has no decoder of its own. */
export type Decode = (bytes: Uint8Array) => string;

export function attachedJson(text: string): Attached {
  try {
    return { text, value: JSON.parse(text) };
  } catch {
    return { text };
  }
}

// the program writes each entry like this, and inside a text of JSON the quotes could not stand bare
const BEGINS = '{"envelope":';
const VERSIONS = '],"versions":';

const parses = (text: string): boolean => {
  try {
    JSON.parse(text);
    return true;
  } catch {
    return false;
  }
};

/** Numbers of the entries at which a ledger's text stops being JSON; none where it is broken outside of its entries. */
export function brokenEntries(text: string): readonly number[] {
  const [, ...pieces] = text.split(BEGINS);
  return pieces.flatMap((piece, index) => {
    const last = index === pieces.length - 1;
    const versions = piece.lastIndexOf(VERSIONS);
    const own = last && versions >= 0 ? piece.slice(0, versions) : piece.replace(/,$/, "");
    return parses(`${BEGINS}${own}`) ? [] : [index + 1];
  });
}

/** What is said of a file that is not JSON any more: `seal-file-not-json`, for each entry where it broke. */
export function notJson(file: string, text: string): readonly Refusal[] {
  const broken = brokenEntries(text);
  if (broken.length === 0) return [refuse("seal-file-not-json", file, { file }).refusal];
  return broken.map((number) => refuse("seal-file-not-json", `entries/${number - 1}`, { file, number }).refusal);
}
