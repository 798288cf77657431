/**
 * The text of one code of a card: twenty signs of QR's alphanumeric mode, the most that its smallest version (21 modules) holds with a
 * medium check (ISO/IEC 18004, table 7). `AB`, the version, the code, then five bits a sign: company 3, job 5, step 4, check 4.
 *
 * Company, job and step are the first bits of SHA-256 over their ids, the check those of SHA-256 over all of them and the code. So a
 * phone decides without signal, from ids that it has anyway, and a card holds no secret. It tells apart what was misread, altered
 * or printed elsewhere: a card of another company passes for one of a given job once in 2^60. It does not stop who copies a card
 * or knows the job's id: whatever a card says is a question to a person, and nothing is proved by it.
 */
export const CARD_VERSION = "1";

/** Papers that cards are printed on, and the four codes of each from the upper left one clockwise. */
export const cardCodeSigns = { letter: ["A", "B", "C", "D"], a4: ["E", "F", "G", "H"] } as const;
export type CardPaper = keyof typeof cardCodeSigns;

/** Thirty-two signs without those that pass for others. */
const SIGNS = "0123456789ABCDEFGHJKMNPQRSTVWXYZ";
const FORM = /^AB(.)(.)([0-9A-HJKMNP-TV-Z]{3})([0-9A-HJKMNP-TV-Z]{5})([0-9A-HJKMNP-TV-Z]{4})([0-9A-HJKMNP-TV-Z]{4})$/;

/** A code's place on its paper, 0 the upper left one, then clockwise. */
export interface CardPlace {
  readonly paper: CardPaper;
  readonly place: 0 | 1 | 2 | 3;
}

/** What stands in a code, not yet compared with anything. */
export interface CardSigns extends CardPlace {
  readonly company: string;
  readonly job: string;
  readonly step: string;
  readonly check: string;
}

/** How many signs each part has. */
export const partSigns = { company: 3, job: 5, step: 4, check: 4 } as const;
/** In place of a step: the card is for any of the job's steps. */
export const NO_STEP = "0000";

/** The first bits of a digest of 64 hex digits, five a sign. */
export const signsOf = (digest: string, count: number): string =>
  Array.from({ length: count }, (_, n) => {
    // two hex digits hold eight bits, and five of them begin within the first four
    const [digit, within] = [Math.floor((5 * n) / 4), (5 * n) % 4];
    return SIGNS[(Number.parseInt(digest.slice(digit, digit + 2), 16) >> (3 - within)) & 31];
  }).join("");

/** Worked out at each call: what acts by being loaded would be in the crew's first script. */
function placeOf(sign: string): CardPlace | undefined {
  for (const paper of ["letter", "a4"] as const) {
    const signs: readonly string[] = cardCodeSigns[paper];
    const place = signs.indexOf(sign);
    if (place !== -1) return { paper, place: place as CardPlace["place"] };
  }
  return undefined;
}

/** Takes a code's text apart. Neither a digest nor any id is needed: media tells cards from other codes by it. */
export function cardSigns(text: string): CardSigns | "not a card" | "other version" {
  if (text.length !== 20) return "not a card";
  const [, version, code = "", company = "", job = "", step = "", check = ""] = FORM.exec(text) ?? [];
  if (version === undefined) return "not a card";
  if (version !== CARD_VERSION) return "other version";
  const at = placeOf(code);
  return at === undefined ? "not a card" : { ...at, company, job, step, check };
}
