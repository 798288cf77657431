import { factsOf } from "../../job/index.ts";
import type { KeepState } from "./keep/index.ts";

/** A picture whose entry this phone made and whose bytes are neither at the office nor here. */
export interface Gone {
  readonly job: string;
  readonly title: string;
  readonly photo: string;
  readonly item: string;
  readonly tag?: string;
}

/** Pictures that this phone announced and has lost since: a browser may clear a store away that nobody opened for a week. */
export function announcedAndGone({ books, photos, phone }: Pick<KeepState, "books" | "photos" | "phone">): readonly Gone[] {
  const here = new Set(photos.filter(({ standing }) => standing !== "lost").map(({ sha256 }) => sha256));
  return books.flatMap(({ kept, state }) =>
    factsOf(state, "picture-taken")
      .filter(({ entry }) => entry.author.phone === phone)
      .filter(({ what }) => kept.photos[what.photo] === undefined && !here.has(what.photo))
      .map(({ what: { photo, item, tag } }) => ({ job: kept.job, title: kept.title, photo, item, ...(tag === undefined ? {} : { tag }) })),
  );
}
