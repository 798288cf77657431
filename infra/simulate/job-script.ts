import { courtyard, type drawing, type JobBook, type JobScript, type SentEntry } from "../demo/index.ts";

/** Entries that a phone sends in one go, and the photos that they name. */
export interface Sending {
  readonly entries: readonly SentEntry[];
  /** SHA-256 of each. */
  readonly photos: readonly string[];
}

/** The demo's whole job once more, with a name and a number of its own. */
export const scriptOf = (number: number): JobScript => ({ ...courtyard, title: `Courtyard fall ${number}`, ownNumber: `S-${number}` });

const photoOf = ({ sealed, body }: SentEntry): readonly string[] => {
  if (sealed.kind !== "picture-taken") return [];
  const what = (body as unknown as { what: { content: { photo: string } } }).what.content;
  return [what.photo];
};

/** What a phone holds back, in pieces. */
export function sendingsOf({ outbox }: Pick<JobBook, "outbox">, entriesPerSend: number): Sending[] {
  const list: Sending[] = [];
  for (let i = 0; i < outbox.length; i += entriesPerSend) {
    const entries = outbox.slice(i, i + entriesPerSend);
    list.push({ entries, photos: entries.flatMap(photoOf) });
  }
  return list;
}

/** Which of so many sendings are made on a day of so many. */
export const ofDay = <T>(list: readonly T[], day: number, days: number): readonly T[] =>
  list.slice(Math.floor((day * list.length) / days), Math.floor(((day + 1) * list.length) / days));

/** Bytes that begin as a JPEG does and are no picture: so large as a phone's where they are whole, else much smaller. */
export const photoBytes = (sizes: () => number): typeof drawing =>
  (async (drawn: unknown) => {
    const text = Buffer.from(JSON.stringify(drawn));
    const bytes = Buffer.alloc(Math.max(sizes(), text.length + 4));
    bytes.set([0xff, 0xd8, 0xff, 0xe0]);
    text.copy(bytes, 4);
    return bytes;
  }) as unknown as typeof drawing;
