import {
  type Clearance,
  clearances,
  type Entry,
  entryOf,
  type Finding,
  findings,
  findingsOn,
  type JobLedger,
  type JobState,
  jobState,
  type ToleranceSheet,
} from "../../../job/index.ts";
import type { LedgerEntry } from "../../../ledger/index.ts";
import { openFirst } from "../next.ts";
import { ownMark } from "./heads.ts";
import { lazily } from "./lazily.ts";
import type { Glance, GlanceLine, KeptJob, OwnEntry } from "./shapes.ts";

/** An entry of this phone that the kept ledger does not hold yet, as the core reads it: its clock set right by the last contact. */
function ownEntry({ entry: { sealed, body, digest } }: OwnEntry, skew: number): Entry {
  const { number: _, ...kept } = entryOf({ envelope: sealed, body } as unknown as LedgerEntry, digest ?? "");
  return { ...kept, sent: sealed.made, received: sealed.made + skew };
}

/** The ledger's entries as the core reads them, each the same object whenever its job is asked for again. */
const keptEntries = new WeakMap<KeptJob, readonly Entry[]>();

function entriesOf(kept: KeptJob): readonly Entry[] {
  const known = keptEntries.get(kept) ?? kept.ledger.entries.map((entry) => entryOf(entry, kept.digests[entry.envelope.id] ?? ""));
  keptEntries.set(kept, known);
  return known;
}

/** What the company's things say, by their digest: jobs with one tolerance sheet share it, and it is read once for all of them. */
const contents = new Map<string, JobLedger["versions"][string]>();

function versionsOf({ ledger }: KeptJob): JobLedger["versions"] {
  for (const { digest, content } of ledger.versions) if (!contents.has(digest)) contents.set(digest, content);
  return Object.fromEntries(ledger.versions.map(({ digest, content }) => [digest, contents.get(digest) ?? content]));
}

/**
 * A job as this phone knows it: the edge's ledger, and whatever of its own is not in it yet. Refused entries count for nothing.
 * `skew`: edge's clock less the phone's, ms.
 */
export function bookOf(kept: KeptJob, own: readonly OwnEntry[], skew: number): JobLedger {
  const entries = entriesOf(kept);
  const known = new Set(entries.map(({ id }) => id));
  const fresh = own.filter(({ job, id, standing }) => job === kept.job && standing !== "refused" && !known.has(id));
  return { entries: [...entries, ...fresh.map((one) => ownEntry(one, skew))], versions: versionsOf(kept) };
}

/** What the phone holds of one job and what the core makes of it; judged when somebody asks. */
export interface Book {
  readonly kept: KeptJob;
  readonly state: JobState;
  readonly findings: readonly Finding[];
  /** Of the findings those that an item's entries decide, judged without the rest. */
  readonly on: (item: string, tag: string | undefined) => readonly Finding[];
  /** Entries of this phone that the office has not seen. */
  readonly unseen: readonly OwnEntry[];
  readonly refused: readonly OwnEntry[];
}

type Judged = Pick<Book, "state" | "findings" | "on">;

function judged(kept: KeptJob, own: readonly OwnEntry[], skew: number): Judged {
  const state = lazily(() => jobState(bookOf(kept, own, skew)));
  const all = lazily(() => findings(state()));
  return {
    get state() {
      return state();
    },
    get findings() {
      return all();
    },
    on: (item, tag) => findingsOn(state(), item, tag),
  };
}

interface Made {
  readonly kept: KeptJob;
  readonly mark: string;
  readonly standings: string;
  readonly judged: Judged;
  readonly book: Book;
}

/** Read from the store anew it is another object: the same reading of the edge says the same. */
const isSame = (a: KeptJob, b: KeptJob): boolean => a === b || (a.readAt === b.readAt && a.ledger.head.hash === b.ledger.head.hash);

/** Makes books, and judges anew only when something that counts is new: an old phone needs its time for the next reading. */
export function bookMaker(): (kept: KeptJob, own: readonly OwnEntry[], skew: number) => Book {
  const made = new Map<string, Made>();
  return (kept, own, skew) => {
    const mine = own.filter(({ job }) => job === kept.job);
    const mark = ownMark(mine, kept.job, skew);
    const standings = mine.map(({ standing }) => standing[0]).join("");
    const before = made.get(kept.job);
    const held = before !== undefined && isSame(before.kept, kept) ? before.kept : kept;
    const known = before?.kept === held && before.mark === mark ? before : undefined;
    if (known?.standings === standings) return known.book;
    const of = known?.judged ?? judged(held, mine, skew);
    const book: Book = {
      kept: held,
      get state() {
        return of.state;
      },
      get findings() {
        return of.findings;
      },
      on: of.on,
      unseen: mine.filter(({ standing }) => standing === "not sent"),
      refused: mine.filter(({ standing }) => standing === "refused"),
    };
    made.set(kept.job, { kept: held, mark, standings, judged: of, book });
    return book;
  };
}

/** The clearances as of `now`, the edge's clock as well as the phone knows it. */
export const clearancesOf = (book: Pick<Book, "state" | "findings">, now: number): readonly Clearance[] =>
  clearances(book.state, book.findings, now);

/** A clearance in a line. */
export const glanceLine = (sheet: ToleranceSheet | undefined, { covering, state, lines, announced }: Clearance): GlanceLine => ({
  covering,
  act: sheet?.coverings.find(({ id }) => id === covering)?.title,
  state,
  held: lines.length,
  ...(announced === undefined ? {} : { about: announced.about }),
});

/** What the first screen says of a job at `now`, and until when that is so. */
export function glanceOf(book: Pick<Book, "state" | "findings">, now: number): Glance {
  const { state, findings: all } = book;
  const later = all.flatMap(({ from }) => (from !== undefined && from > now ? [from] : []));
  return {
    open: openFirst(clearancesOf(book, now)).map((clearance) => glanceLine(state.sheet, clearance)),
    zone: state.opened?.zone ?? "UTC",
    at: now,
    ...(later.length === 0 ? {} : { until: Math.min(...later) }),
  };
}
