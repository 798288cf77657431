import { endedBy, endedOf, type KeptKind, type Withholding } from "#core/keeping/index.ts";
import { isWithheld, type LedgerEntry } from "#core/ledger/index.ts";
import type { Outcome } from "#core/outcome/index.ts";
import { ok } from "#core/outcome/index.ts";
import { type CalendarDay, isoDay } from "#core/units/index.ts";
import type { ErasedRow } from "../adapters/erased.ts";
import { type Author, change, companyPlace } from "../company/change.ts";
import { PROGRAM } from "../ledger/index.ts";
import { namelessSite } from "../persons/found.ts";
import { keysOfFiles, keysOfRecords, letGo } from "../persons/keys.ts";
import { linksNameless } from "../persons/links.ts";
import { whatOf } from "../persons/remove.ts";
import { withholdInCompany, withholdInJob } from "../persons/withholding.ts";
import type { Services } from "../services.ts";
import { type Kept, sitesKept } from "./sites.ts";

const REASON = "the period for which it is kept has ended";

interface Read {
  readonly job: string;
  readonly entries: readonly LedgerEntry[];
}

export async function jobsRead(services: Services, company: string, { jobs }: Kept): Promise<readonly Read[]> {
  const read: Read[] = [];
  for (const { job } of jobs) read.push({ job, entries: await services.ledgers.read({ company, job }) });
  return read;
}

/** What goes of a site when these periods have ended; a file that a ledger outside the site names stays. */
export async function goingOf(services: Services, company: string, read: readonly Read[], kinds: ReadonlySet<KeptKind>) {
  const first = endedOf(read, kinds, new Set());
  const elsewhere = await services.erasing.namedElsewhere(
    company,
    first.files,
    read.map(({ job }) => job),
  );
  return endedOf(read, kinds, elsewhere);
}

/** The same of the company's own ledger: address and place of the site, each time that they were set. */
export async function goingOfSite(
  services: Services,
  company: string,
  site: string | undefined,
  kinds: ReadonlySet<KeptKind>,
): Promise<readonly Withholding[]> {
  if (site === undefined || !(kinds.has("names") || kinds.has("places"))) return [];
  const { job } = companyPlace(company);
  const set = (await services.ledgers.read({ company, job })).filter(
    (entry) => entry.envelope.kind === "site-set" && whatOf(entry).site === site,
  );
  return set.flatMap(({ envelope: { id, number, kind }, body }): readonly Withholding[] => {
    const wanted = [...(kinds.has("names") ? ["who" as const] : []), ...(kinds.has("places") ? ["where" as const] : [])];
    const parts = wanted.filter((part) => body[part] !== undefined && !isWithheld(body[part]));
    return parts.length === 0 ? [] : [{ job, id, number, kind, parts }];
  });
}

/** Of these photos and papers, those that the company still has. */
async function stillThere(services: Services, company: string, files: readonly string[]): Promise<readonly string[]> {
  const there = await Promise.all(
    files.map(async (sha256) => (await services.photos.get(company, sha256)) ?? (await services.papers.get(company, sha256))),
  );
  return files.filter((_, i) => there[i] !== undefined);
}

/** Of these keys, those that have not been erased before. */
async function newKeys(services: Services, company: string, keys: readonly string[]): Promise<readonly string[]> {
  const known = await services.erasing.known(company, keys);
  return keys.filter((key) => !known.has(key));
}

/** Ends what has ended of one site. Files first, bodies job by job, last the company's own entry; asked again it goes on where it broke off. */
async function endSite(services: Services, author: Author, site: Kept, kinds: readonly KeptKind[]): Promise<Outcome<boolean>> {
  const { company } = author;
  const { erasing } = services;
  const now = services.clock();
  const read = await jobsRead(services, company, site);
  const going = await goingOf(services, company, read, new Set(kinds));
  const files = await stillThere(services, company, going.files);
  const places = site.jobs.map(({ job }) => ({ company, job }));
  const records = kinds.includes("records") ? (await Promise.all(places.map((place) => keysOfRecords(services, place)))).flat() : [];
  const keys = await newKeys(services, company, [...(await keysOfFiles(services, company, files)), ...records]);
  const row = site.site === undefined ? undefined : await services.sites.get(company, site.site);
  const nameless = row && namelessSite(row.content, { names: kinds.includes("names"), places: kinds.includes("places") });
  const ofSite = await goingOfSite(services, company, site.site, new Set(kinds));
  const isNamed = row !== undefined && JSON.stringify(row.content) !== JSON.stringify(nameless);
  const links = kinds.includes("names") ? await Promise.all(places.map((place) => linksNameless(services, place, () => true))) : [];
  const linkRows = links.flatMap(({ rows }) => rows);
  if (going.bodies.length + ofSite.length + keys.length + linkRows.length === 0 && !isNamed) return ok(false);
  const objects = keys.map((ref): ErasedRow => ({ kind: "object", ref }));
  const first = [
    ...erasing.note(company, [...objects, ...linkRows], now),
    ...links.flatMap(({ statements }) => statements),
    ...erasing.files(company, files),
    ...(records.length === 0 ? [] : places.flatMap((place) => erasing.links(place, now))),
  ];
  if (first.length > 0) await services.database.batch(first);
  for (const { job } of site.jobs) {
    const own = going.bodies.filter((one) => one.job === job);
    const done = await withholdInJob(services, author, { company, job }, own, REASON);
    if (!done.ok) return done;
  }
  const done = await withholdInCompany(services, author, companyPlace(company), ofSite, REASON);
  if (!done.ok) return done;
  const what = {
    ...(site.site === undefined ? {} : { site: site.site }),
    jobs: site.jobs.map(({ job }) => job),
    from: isoDay(site.from),
    kinds: [...kinds],
    bodies: going.bodies.length + ofSite.length,
    files: files.length,
    records: records.length > 0,
  };
  const inPlace: readonly ErasedRow[] = isNamed ? [{ kind: "site", ref: row.id, content: JSON.stringify(nameless) }] : [];
  const said = await change(services, author, { kind: "period-ended", what }, () => [
    ...erasing.note(company, inPlace, now),
    ...(isNamed && nameless ? [services.sites.put(company, { ...row, content: nameless })] : []),
  ]);
  return said.ok ? ok(true) : said;
}

/** Ends what has ended in a company by a day. Gives the number of sites of which something went. */
export async function endPeriods(services: Services, company: string, zone: string, today: CalendarDay): Promise<number> {
  // no person does it: what is entered is the program's, and admitted as the office's
  const author: Author = { company, person: PROGRAM, role: "office" };
  let count = 0;
  for (const site of await sitesKept(services, company, zone)) {
    const kinds = endedBy(site, today);
    if (kinds.length === 0) continue;
    const ended = await endSite(services, author, site, kinds);
    if (!ended.ok) throw new Error(`a period could not be ended: ${ended.refusal.code} at ${ended.refusal.place}`);
    if (ended.value) count += 1;
  }
  if (count > 0) await letGo(services);
  return count;
}
