import { isNamedIn, type Removal, removalOf, type Withholding } from "#core/keeping/index.ts";
import { isWithheld, type Json, type LedgerEntry, type PartName } from "#core/ledger/index.ts";
import { type Outcome, ok } from "#core/outcome/index.ts";
import type { ErasedRow } from "../adapters/erased.ts";
import type { Statement } from "../adapters/statement.ts";
import { type Author, type Change, companyPlace } from "../company/change.ts";
import type { Services } from "../services.ts";
import { type Found, NAMELESS, namelessSite } from "./found.ts";
import { keysOfFiles, keysOfRecords, letGo } from "./keys.ts";
import { linksNameless } from "./links.ts";
import { withholdInCompany, withholdInJob } from "./withholding.ts";

/** What goes of a company's jobs, with the files that no other job or paper names. */
export async function removalFrom(services: Services, company: string, { jobs, sought }: Found): Promise<Removal> {
  const first = removalOf(jobs, sought, new Set());
  const elsewhere = await services.erasing.namedElsewhere(
    company,
    first.files,
    jobs.map(({ job }) => job),
  );
  return removalOf(jobs, sought, elsewhere);
}

/** What an entry says; nothing where that has been withheld. */
export const whatOf = ({ body }: Pick<LedgerEntry, "body">): { readonly [key: string]: Json } => {
  const there = body.what;
  const content = there === undefined || isWithheld(there) ? undefined : there.content;
  return typeof content === "object" && content !== null ? (content as { readonly [key: string]: Json }) : {};
};

/** Of the company's ledger: names and contacts, and address and place of the person's sites. */
export function companyBodies({ company, sites }: Found, job: string): readonly Withholding[] {
  const named = new Set(company.mentions.filter(({ part }) => part !== "what").map(({ id, part }) => `${id} ${part}`));
  const ids = new Set(sites.map(({ id }) => id));
  return company.entries.flatMap((entry) => {
    const { id, number, kind } = entry.envelope;
    const isTheirs = kind === "site-set" && ids.has(String(whatOf(entry).site));
    const parts = (["who", "where"] as const satisfies readonly PartName[]).filter((part) => {
      const there = entry.body[part];
      return there !== undefined && !isWithheld(there) && (isTheirs || named.has(`${id} ${part}`));
    });
    return parts.length === 0 ? [] : [{ job, id, number, kind, parts }];
  });
}

/** Rows that hold a name beside the ledgers, and what stands there instead. */
function rowsInPlace(services: Services, company: string, { person, sites, oldWarranties }: Found) {
  const rows: ErasedRow[] = [];
  const statements: Statement[] = [];
  if (person !== undefined) {
    rows.push({ kind: "person", ref: person.id, content: NAMELESS });
    statements.push(...services.erasing.name(company, person.id, NAMELESS));
  }
  for (const { id, number, content } of sites) {
    const nameless = namelessSite(content);
    rows.push({ kind: "site", ref: id, content: JSON.stringify(nameless) });
    statements.push(services.sites.put(company, { id, number, content: nameless }));
  }
  for (const { note: _, ...old } of oldWarranties) {
    const nameless = { ...old, customer: NAMELESS, address: NAMELESS };
    rows.push({ kind: "old warranty", ref: JSON.stringify([old.number, old.part]), content: JSON.stringify(nameless) });
    statements.push(services.oldWarranties.put(company, nameless));
  }
  return { rows, statements };
}

export interface Removed {
  readonly bodies: number;
  readonly files: number;
  readonly stays: number;
}

/**
 * Removes what names a person. Files and rows go first, then what the company's ledger holds, then the bodies job by job, last the names
 * in the request itself, with its answer: broken off anywhere, it still knows whom it is about when it is asked again, and is done to
 * the end. Envelopes stay, so every chain still verifies.
 */
export async function removeFound(
  services: Services,
  author: Author,
  found: Found,
  about: { readonly request: string; readonly reason: string; readonly now: number; readonly told: (removed: Removed) => Change },
): Promise<Outcome<Removed>> {
  const { company } = author;
  const { request, now, reason, told } = about;
  const { erasing } = services;
  const { bodies, files, stays } = await removalFrom(services, company, found);
  const whole = found.jobs.filter(({ isWhole }) => isWhole).map(({ job }) => ({ company, job }));
  const keys = [
    ...(await keysOfFiles(services, company, files)),
    ...(await Promise.all(whole.map((place) => keysOfRecords(services, place)))).flat(),
  ];
  const objects = keys.map((ref): ErasedRow => ({ kind: "object", ref }));
  const inPlace = rowsInPlace(services, company, found);
  const links = await Promise.all(
    found.jobs.map(({ job, isWhole }) => linksNameless(services, { company, job }, (text) => isWhole || isNamedIn(text, found.sought))),
  );
  const first = [
    ...erasing.note(company, [...objects, ...links.flatMap(({ rows }) => rows)], now),
    ...links.flatMap(({ statements }) => statements),
    ...erasing.note(company, inPlace.rows, now),
    ...inPlace.statements,
    ...erasing.files(company, files),
    ...whole.flatMap((place) => erasing.links(place, now)),
  ];
  if (first.length > 0) await services.database.batch(first);
  const place = companyPlace(company);
  const ofCompany = companyBodies(found, place.job);
  const others = ofCompany.filter(({ id }) => id !== request);
  const before = await withholdInCompany(services, author, place, others, reason);
  if (!before.ok) return before;
  for (const { job } of found.jobs) {
    const own = bodies.filter((one) => one.job === job);
    const done = await withholdInJob(services, author, { company, job }, own, reason);
    if (!done.ok) return done;
  }
  const removed = { bodies: bodies.length + others.length, files: files.length, stays: stays.length };
  const own = ofCompany.filter(({ id }) => id === request);
  const last = await withholdInCompany(services, author, place, own, reason, told(removed));
  if (!last.ok) return last;
  await letGo(services);
  return ok(removed);
}
