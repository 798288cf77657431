import type { Writer } from "#core/job/index.ts";
import type { Digest } from "#core/ledger/index.ts";
import { type Body, type Head, type Json, type PartName, partNames, type Sealed, type SealedEntry, seal } from "#core/ledger/index.ts";
import { type Outcome, ok } from "#core/outcome/index.ts";
import { salt } from "../chance.ts";

/** One entry on its way into a ledger. */
export interface Incoming {
  readonly id: string;
  /** Where in what was sent. */
  readonly place: string;
  readonly writer: Writer;
  /** The phone's clock when sent. */
  readonly sent: number;
  /** The sealed entry once the head before it is known: the edge's own running number is its place in the ledger. */
  readonly sealed: (before: Head) => Promise<Outcome<SealedEntry>>;
  /** An entry of the program's own that may be asked for twice: there once is enough, whatever its digest. */
  readonly once?: boolean;
}

/** The id under which the edge writes, in the place of a phone's. */
export const EDGE = "edge";
/** The id of the program where no person is the author. */
export const PROGRAM = "program";

export const fromPhone = (
  entry: { sealed: Sealed; body: Body; digest: string },
  place: string,
  writer: Writer,
  sent: number,
): Incoming => ({
  id: entry.sealed.id,
  place,
  writer,
  sent,
  sealed: async () => ok(entry),
});

export interface Made {
  readonly job: string;
  readonly id: string;
  readonly kind: string;
  readonly person: string;
  readonly writer: Writer;
  readonly at: number;
  readonly contents: { readonly [P in PartName]?: Json };
  readonly once?: boolean;
}

/** An entry that the edge makes itself, for a person or for the program. */
export const fromEdge = (digest: Digest, made: Made): Incoming => ({
  id: made.id,
  place: "",
  writer: made.writer,
  sent: made.at,
  ...(made.once ? { once: true } : {}),
  sealed: (before) =>
    seal(digest, {
      job: made.job,
      id: made.id,
      kind: made.kind,
      author: { person: made.person, phone: EDGE },
      run: before.number,
      made: made.at,
      contents: made.contents,
      salts: Object.fromEntries(partNames.filter((part) => made.contents[part] !== undefined).map((part) => [part, salt()])),
    }),
});
