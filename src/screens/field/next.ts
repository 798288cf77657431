import type { Clearance } from "../../job/index.ts";
import { type Book, clearancesOf } from "./keep/index.ts";

const nearness: Readonly<Record<Clearance["state"], number>> = { clear: 0, "on word": 1, "not yet": 2 };

/** What is open, the covering that is announced soonest first, then in the order of the tolerance sheet. */
export const openFirst = (all: readonly Clearance[]): readonly Clearance[] => {
  const open = all.filter(({ covered }) => covered === undefined);
  const about = ({ announced }: Clearance): number => announced?.about ?? Number.POSITIVE_INFINITY;
  return [...open].sort((a, b) => (about(a) === about(b) ? 0 : about(a) - about(b)));
};

/** Jobs by what will be covered next: announced soonest, then nearest to clear; a job with nothing open comes last. */
export function inOrder(books: readonly Book[], now: number): readonly Book[] {
  const keyed = books.map((book) => {
    const [next] = openFirst(clearancesOf(book, now));
    const key: readonly [number, number, number] =
      next === undefined
        ? [2, 0, 0]
        : next.announced === undefined
          ? [1, nearness[next.state], next.lines.length]
          : [0, next.announced.about, 0];
    return { book, key };
  });
  return keyed
    .sort((a, b) => a.key[0] - b.key[0] || a.key[1] - b.key[1] || a.key[2] - b.key[2] || a.book.kept.title.localeCompare(b.book.kept.title))
    .map(({ book }) => book);
}
