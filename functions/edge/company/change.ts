import { contentDigest, type Json } from "#core/ledger/index.ts";
import { type Outcome, ok, refuse } from "#core/outcome/index.ts";
import type { VersionMade } from "#core/wire/index.ts";
import type { VersionRow } from "../adapters/companies.ts";
import type { Place } from "../adapters/ledgers.ts";
import type { Session } from "../adapters/sessions.ts";
import type { Statement } from "../adapters/statement.ts";
import { newId } from "../chance.ts";
import { append, fromEdge } from "../ledger/index.ts";
import type { Services } from "../services.ts";

/** The company's own ledger lies among the jobs' under an id that no job may have. */
export const COMPANY_LEDGER = "company-";
export const companyPlace = (company: string): Place => ({ company, job: `${COMPANY_LEDGER}${company}` });

export type Author = Pick<Session, "company" | "person" | "role">;

export interface Change {
  /** Of a change that can happen once only: made twice it is one entry. */
  readonly id?: string;
  readonly kind: string;
  readonly what: Json;
  readonly who?: Json;
}

/** One change of the company, as an entry of its ledger, with the rows that follow from it: both or neither. */
export async function change(
  services: Services,
  author: Author,
  one: Change,
  also: (number: number) => readonly Statement[],
): Promise<Outcome<number>> {
  return changes(services, author, [one], also);
}

/**
 * Several changes with the rows that follow from them, all or none; answers the number of the first. `begins`: the ledger
 * begins with them, refused `job-exists` when there is one already.
 */
export async function changes(
  services: Services,
  author: Author,
  list: readonly Change[],
  also: (first: number) => readonly Statement[],
  begins = false,
): Promise<Outcome<number>> {
  const at = services.clock();
  const place = companyPlace(author.company);
  const incoming = list.map(({ id = newId(), kind, what, who }) => {
    const contents = who === undefined ? { what } : { what, who };
    return fromEdge(services.digest, {
      job: place.job,
      id,
      kind,
      person: author.person,
      writer: author.role,
      at,
      contents,
      once: true,
    });
  });
  const appended = await append(services, place, incoming, at, {
    whole: true,
    begins,
    also: (rows) => also(rows[0]?.envelope.number ?? 0),
  });
  if (!appended.ok) return appended;
  const first = appended.value.answers[0];
  return ok(first && "number" in first ? first.number : appended.value.head.number);
}

/** The kind of entry by which a version of a thing is set. */
export const entryKinds = {
  sheet: "sheet-set",
  "kit card": "kit-card-set",
  settings: "settings-set",
  instrument: "instrument-set",
} as const;

/** A new version of one of the company's things. The same content as the newest one is that version again, and no entry. */
export async function setVersion(
  services: Services,
  author: Author,
  thing: {
    readonly kind: VersionRow["kind"];
    readonly name: string;
    readonly content: Json;
    /** Digest of the version that was edited: refused `version-not-newest` where another has come meanwhile. */
    readonly from?: string | undefined;
  },
  also: readonly Statement[] = [],
): Promise<Outcome<VersionMade>> {
  const { kind, name, content, from } = thing;
  const digest = await contentDigest(services.digest, content);
  if (!digest.ok) return digest;
  const newest = await services.companies.newestOf(author.company, kind, name);
  if (newest?.digest === digest.value) return ok({ name, number: newest.number, digest: newest.digest });
  if (from !== undefined && newest?.digest !== from) return refuse("version-not-newest", "if-match", {});
  const entry = { kind: entryKinds[kind], what: { name, digest: digest.value, content } };
  const number = await change(services, author, entry, (at) => [
    services.companies.addVersion(author.company, { number: at, kind, name, digest: digest.value, content }),
    ...also,
  ]);
  return number.ok ? ok({ name, number: number.value, digest: digest.value }) : number;
}
