import type { Instrument, Placing, Words } from "../../../job/index.ts";
import type { Book } from "../keep/index.ts";

interface Named {
  readonly id: string;
  readonly title: Words;
}

const each = <T extends Named>(books: readonly Book[], of: (book: Book) => readonly T[] | undefined): readonly T[] => [
  ...new Map(books.flatMap((book) => (of(book) ?? []).map((thing) => [thing.id, thing] as const))).values(),
];

/** Instruments and placings of the tolerance sheets that this phone's jobs follow. */
export const instrumentsOn = (books: readonly Book[]): readonly Instrument[] => each(books, ({ state }) => state.sheet?.instruments);
export const placingsOn = (books: readonly Book[]): readonly Placing[] => each(books, ({ state }) => state.sheet?.placings);
