import { isWithheld, type Json, type LedgerEntry, type PartName, partNames } from "../ledger/index.ts";
import { isNamedBy, type Sought } from "./mentions.ts";
import type { KeptKind } from "./periods.ts";

/** A job in which somebody is named. */
export interface NamedJob {
  readonly job: string;
  readonly entries: readonly LedgerEntry[];
  /** The person is its customer: address and position of the site are the person's too. */
  readonly isTheirs: boolean;
  /** Not kept: everything that was said and photographed goes, and not only what names the person. */
  readonly isWhole: boolean;
}

/** Parts of an entry's body that go. */
export interface Withholding {
  readonly job: string;
  readonly id: string;
  readonly number: number;
  readonly kind: string;
  readonly parts: readonly PartName[];
}

export interface Removal {
  readonly bodies: readonly Withholding[];
  /** SHA-256 of photos and papers that nothing kept names any more. */
  readonly files: readonly string[];
  /** What names the person and stays, because what was found rests on it. */
  readonly stays: readonly Withholding[];
}

/** Kinds that hold words alone: nothing is found by them. */
const wordsAlone: ReadonlySet<string> = new Set(["note-for-record", "note-for-office", "record-released"]);
/** Kinds whose `who` is the customer's and the site's. */
const ofSite: ReadonlySet<string> = new Set(["job-opened", "particulars-set", "site-taken-over", "site-located"]);
/** Says itself what was withheld, and nothing of a person. */
const NEVER = "body-withheld";

const contentOf = ({ body }: LedgerEntry, part: PartName): Json | undefined => {
  const there = body[part];
  return there === undefined || isWithheld(there) ? undefined : there.content;
};

/** Kinds whose words are a picture's or a paper's. */
const ofPictures: ReadonlySet<string> = new Set([
  "picture-taken",
  "picture-read",
  "picture-looked-at",
  "received-otherwise",
  "region-blurred",
  "paper-added",
]);

const HEX = /^[0-9a-f]{64}$/;

/** Every file that an entry names: photos and papers, also those of entries that were moved in. */
function filesOf(what: Json | undefined): readonly string[] {
  if (typeof what !== "object" || what === null || Array.isArray(what)) return [];
  const { photo, pdf, paper, entries } = what as { readonly [key: string]: Json | undefined };
  const own = [photo, pdf, paper].filter((one): one is string => typeof one === "string" && HEX.test(one));
  const moved = Array.isArray(entries) ? entries.flatMap((one) => filesOf((one as { what?: Json } | null)?.what)) : [];
  return [...own, ...moved];
}

function partsOf(entry: LedgerEntry, { isTheirs, isWhole }: NamedJob, sought: Sought): { goes: PartName[]; stays: PartName[] } {
  const { kind } = entry.envelope;
  const goes: PartName[] = [];
  const stays: PartName[] = [];
  if (kind === NEVER) return { goes, stays };
  for (const part of partNames) {
    const content = contentOf(entry, part);
    if (content === undefined) continue;
    const isNamed = isNamedBy(content, sought);
    const ofTheirSite = isTheirs && (part === "where" || (part === "who" && ofSite.has(kind)));
    if (isWhole || ofTheirSite || (isNamed && (part !== "what" || wordsAlone.has(kind)))) goes.push(part);
    else if (isNamed) stays.push(part);
  }
  return { goes, stays };
}

/**
 * What goes when a person's data is removed from these jobs, and what stays. A file goes when an entry that named it is withheld and
 * no entry that stays names it; `keptElsewhere`: files that other jobs name, which stay.
 */
export function removalOf(jobs: readonly NamedJob[], { names, contacts }: Sought, keptElsewhere: ReadonlySet<string>): Removal {
  // an id says nothing once the name that it stood for is gone
  const sought = { names, contacts };
  const bodies: Withholding[] = [];
  const stays: Withholding[] = [];
  const gone = new Set<string>();
  const kept = new Set(keptElsewhere);
  for (const job of jobs) {
    for (const entry of job.entries) {
      const { number, id, kind } = entry.envelope;
      const parts = partsOf(entry, job, sought);
      const at = { job: job.job, id, number, kind };
      if (parts.goes.length > 0) bodies.push({ ...at, parts: parts.goes });
      if (parts.stays.length > 0) stays.push({ ...at, parts: parts.stays });
      for (const file of filesOf(contentOf(entry, "what"))) (parts.goes.includes("what") ? gone : kept).add(file);
    }
  }
  return { bodies, files: [...gone].filter((file) => !kept.has(file)).sort(), stays };
}

/** Whether the person is the customer of a job: named where the office says whose job it is. */
export const isCustomerOf = (entries: readonly LedgerEntry[], sought: Sought): boolean =>
  entries.some(
    (entry) =>
      (ofSite.has(entry.envelope.kind) || entry.envelope.kind === "new-owner") && isNamedBy(contentOf(entry, "who") ?? null, sought),
  );

const endedParts = (kind: string, ended: ReadonlySet<KeptKind>): readonly PartName[] => [
  ...(ended.has(ofPictures.has(kind) ? "pictures" : "entries") ? (["what"] as const) : []),
  ...(ended.has("names") ? (["who"] as const) : []),
  ...(ended.has("places") ? (["where"] as const) : []),
];

/**
 * What goes of a site's jobs when the periods of these kinds have ended. An entry of another kind that names a picture, such as what was
 * moved in or done by others, keeps its words; the picture itself goes all the same, unless a job that is kept names it.
 */
export function endedOf(
  jobs: readonly Pick<NamedJob, "job" | "entries">[],
  ended: ReadonlySet<KeptKind>,
  keptElsewhere: ReadonlySet<string>,
): Omit<Removal, "stays"> {
  const files = new Set<string>();
  const bodies = jobs.flatMap(({ job, entries }) =>
    entries.flatMap((entry): readonly Withholding[] => {
      const { number, id, kind } = entry.envelope;
      if (kind === NEVER) return [];
      if (ended.has("pictures")) for (const file of filesOf(contentOf(entry, "what"))) files.add(file);
      const parts = endedParts(kind, ended).filter((part) => contentOf(entry, part) !== undefined);
      return parts.length === 0 ? [] : [{ job, id, number, kind, parts }];
    }),
  );
  return { bodies, files: [...files].filter((file) => !keptElsewhere.has(file)).sort() };
}
