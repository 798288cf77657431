import { type Book, bookMaker, glanceOf } from "./book.ts";
import type { Glance, KeptJob, OwnEntry } from "./shapes.ts";

/** What this phone makes of its jobs. It comes with the whole core, so it is a script of its own: the first screen is drawn before. */
export interface Judge {
  readonly book: (kept: KeptJob, own: readonly OwnEntry[], skew: number) => Book;
  readonly glanceOf: (book: Book, now: number) => Glance;
  /** Works out what the page is about to ask: what one entry of this phone comes to. `all`: the phone's own, that one among them. */
  readonly ahead: (kept: KeptJob | undefined, all: readonly OwnEntry[], skew: number, one: OwnEntry) => void;
}

/** The item and tag that an own entry names. */
function named({ entry }: OwnEntry): { readonly item?: unknown; readonly tag?: unknown } {
  const what = (entry.body as { readonly what?: { readonly content?: unknown } } | undefined)?.what?.content;
  return typeof what === "object" && what !== null ? what : {};
}

export function newJudge(): Judge {
  const book = bookMaker();
  return {
    book,
    glanceOf,
    ahead(kept, all, skew, one) {
      if (kept === undefined) return;
      const { item, tag } = named(one);
      const made = book(kept, all, skew);
      if (typeof item === "string") made.on(item, typeof tag === "string" ? tag : undefined);
    },
  };
}
