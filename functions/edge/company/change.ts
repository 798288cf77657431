import { contentDigest, type Json } from "#core/ledger/index.ts";
import { type Outcome, ok } from "#core/outcome/index.ts";
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

type Author = Pick<Session, "company" | "person" | "role">;

export interface Change {
  readonly kind: string;
  readonly what: Json;
  readonly who?: Json;
}

/** One change of the company, as an entry of its ledger, with the rows that follow from it: both or neither. */
export async function change(
  services: Services,
  author: Author,
  { kind, what, who }: Change,
  also: (number: number) => readonly Statement[],
): Promise<Outcome<number>> {
  const at = services.clock();
  const place = companyPlace(author.company);
  const contents = who === undefined ? { what } : { what, who };
  const made = { job: place.job, id: newId(), kind, person: author.person, writer: author.role, at, contents };
  const appended = await append(services, place, [fromEdge(services.digest, made)], at, {
    whole: true,
    also: (rows) => also(rows[0]?.envelope.number ?? 0),
  });
  return appended.ok ? ok(appended.value.head.number) : appended;
}

const entryKinds = { sheet: "sheet-set", "kit card": "kit-card-set", settings: "settings-set", instrument: "instrument-set" } as const;

/** A new version of one of the company's things. The same content as the newest one is that version again, and no entry. */
export async function setVersion(
  services: Services,
  author: Author,
  thing: { readonly kind: VersionRow["kind"]; readonly name: string; readonly content: Json },
  also: readonly Statement[] = [],
): Promise<Outcome<VersionMade>> {
  const { kind, name, content } = thing;
  const digest = await contentDigest(services.digest, content);
  if (!digest.ok) return digest;
  const newest = await services.companies.newestOf(author.company, kind, name);
  if (newest?.digest === digest.value) return ok({ name, number: newest.number, digest: newest.digest });
  const entry = { kind: entryKinds[kind], what: { name, digest: digest.value, content } };
  const number = await change(services, author, entry, (at) => [
    services.companies.addVersion(author.company, { number: at, kind, name, digest: digest.value, content }),
    ...also,
  ]);
  return number.ok ? ok({ name, number: number.value, digest: digest.value }) : number;
}
