import { digits, FEWEST_DIGITS, plain, type Sought } from "./mentions.ts";

/** What a database looks for before a ledger is read. A text that names the person holds one of these, or a sign outside ASCII. */
export interface Signs {
  /** Lower case, letters, digits and what stands in mail addresses. */
  readonly words: readonly string[];
  /** The end of a telephone number, as it stands without what stands between digits. */
  readonly numbers: readonly string[];
}

const isAscii = (text: string): boolean => /^[\x20-\x7e]*$/.test(text);
const longestOf = (parts: readonly string[]): string => parts.reduce((longest, one) => (one.length > longest.length ? one : longest), "");

/** The longest word of a name: a text in ASCII has it letter by letter. One with other letters stands in no such text. */
function ofName(name: string): readonly string[] {
  const words = plain(name).trim();
  return words === "" || !isAscii(words) ? [] : [longestOf(words.split(" "))];
}

function ofAddress(address: string): readonly string[] {
  const wanted = address.trim().toLowerCase();
  // what JSON writes in another way is left out
  return isAscii(wanted) ? [longestOf(wanted.split(/[^a-z0-9@._+-]+/))] : [];
}

/** The signs of one who is sought. */
export function signsOf({ names, contacts }: Pick<Sought, "names" | "contacts">): Signs {
  const [addresses, telephones] = [contacts.filter((one) => one.includes("@")), contacts.filter((one) => !one.includes("@"))];
  return {
    words: [...names.flatMap(ofName), ...addresses.flatMap(ofAddress)],
    // both ends of two spellings of one number agree in as many digits as the shorter one must have
    numbers: telephones.map(digits).flatMap((number) => (number.length < FEWEST_DIGITS ? [] : [number.slice(-FEWEST_DIGITS)])),
  };
}
