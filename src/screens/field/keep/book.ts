import { clearances, type Entry, entryOf, type Finding, findings, type JobLedger, type JobState, jobState } from "../../../job/index.ts";
import type { LedgerEntry } from "../../../ledger/index.ts";
import type { KeptJob, OwnEntry } from "./shapes.ts";

/** An entry of this phone that the kept ledger does not hold yet, as the core reads it: its clock set right by the last contact. */
function ownEntry({ entry: { sealed, body, digest } }: OwnEntry, skew: number): Entry {
  const { number: _, ...kept } = entryOf({ envelope: sealed, body } as unknown as LedgerEntry, digest ?? "");
  return { ...kept, sent: sealed.made, received: sealed.made + skew };
}

/**
 * A job as this phone knows it: the edge's ledger, and whatever of its own is not in it yet. Refused entries count for nothing.
 * `skew`: edge's clock less the phone's, ms.
 */
export function bookOf(kept: KeptJob, own: readonly OwnEntry[], skew: number): JobLedger {
  const known = new Set(kept.ledger.entries.map(({ envelope }) => envelope.id));
  const fresh = own.filter(({ job, id, standing }) => job === kept.job && standing !== "refused" && !known.has(id));
  return {
    entries: [
      ...kept.ledger.entries.map((entry) => entryOf(entry, kept.digests[entry.envelope.id] ?? "")),
      ...fresh.map((one) => ownEntry(one, skew)),
    ],
    versions: Object.fromEntries(kept.ledger.versions.map(({ digest, content }) => [digest, content])),
  };
}

/** What the phone holds of one job and what the core makes of it. */
export interface Book {
  readonly kept: KeptJob;
  readonly state: JobState;
  readonly findings: readonly Finding[];
  /** Entries of this phone that the office has not seen. */
  readonly unseen: readonly OwnEntry[];
  readonly refused: readonly OwnEntry[];
}

const SECOND_MS = 1_000;

interface Made {
  readonly kept: KeptJob;
  readonly mark: string;
  readonly standings: string;
  readonly book: Book;
}

/** Read from the store anew it is another object: the same reading of the edge says the same. */
const isSame = (a: KeptJob, b: KeptJob): boolean => a === b || (a.readAt === b.readAt && a.ledger.head.hash === b.ledger.head.hash);

/** Makes books, and judges anew only when something that counts is new: an old phone needs its time for the next reading. */
export function bookMaker(): (kept: KeptJob, own: readonly OwnEntry[], skew: number) => Book {
  const made = new Map<string, Made>();
  return (kept, own, skew) => {
    const mine = own.filter(({ job }) => job === kept.job);
    // a skew is learned anew with every contact, a few milliseconds off the last: what it moves by less than a second is nothing new
    const mark = [Math.round(skew / SECOND_MS), ...mine.map(({ run, standing }) => `${run}${standing === "refused" ? "r" : ""}`)].join(" ");
    const standings = mine.map(({ standing }) => standing[0]).join("");
    const before = made.get(kept.job);
    const held = before !== undefined && isSame(before.kept, kept) ? before.kept : kept;
    const known = before?.kept === held && before.mark === mark ? before : undefined;
    if (known?.standings === standings) return known.book;
    // of what is held already the core has read the tolerance sheet
    const state = known?.book.state ?? jobState(bookOf(held, mine, skew));
    const book: Book = {
      kept: held,
      state,
      findings: known?.book.findings ?? findings(state),
      unseen: mine.filter(({ standing }) => standing === "not sent"),
      refused: mine.filter(({ standing }) => standing === "refused"),
    };
    made.set(kept.job, { kept: held, mark, standings, book });
    return book;
  };
}

/** The clearances as of `now`, the edge's clock as well as the phone knows it. */
export const clearancesOf = (book: Book, now: number) => clearances(book.state, book.findings, now);
