import { isCustomerOf, isNamedBy, type Mention, mentionsIn, type NamedJob, type Sought } from "#core/keeping/index.ts";
import type { Json, LedgerEntry } from "#core/ledger/index.ts";
import type { NewSite, OldWarranty, PersonRequest } from "#core/wire/index.ts";
import type { PersonRow } from "../adapters/companies.ts";
import type { SiteRow } from "../adapters/sites.ts";
import { companyPlace } from "../company/change.ts";
import type { Services } from "../services.ts";

/** A job in which the person is named, with what names him. */
export interface FoundJob extends NamedJob {
  readonly mentions: readonly Mention[];
}

/** Everything that the company holds which names a person. */
export interface Found {
  readonly sought: Sought;
  readonly jobs: readonly FoundJob[];
  /** Of the company's own ledger. */
  readonly company: { readonly entries: readonly LedgerEntry[]; readonly mentions: readonly Mention[] };
  readonly person?: PersonRow;
  readonly sites: readonly (SiteRow & { readonly jobs: readonly string[] })[];
  readonly oldWarranties: readonly OldWarranty[];
}

export const soughtOf = ({ names, contacts, person }: Pick<PersonRequest, "names" | "contacts" | "person">): Sought => ({
  names,
  contacts,
  ...(person === undefined ? {} : { person }),
});

/**
 * Looks a person up in every ledger and row of a company; the ledgers that can name the person are read, one at a time. `whole`: jobs
 * that are not kept; only one whose customer the person is can be among them.
 */
export async function foundOf(services: Services, company: string, sought: Sought, whole: ReadonlySet<string>): Promise<Found> {
  const jobs: FoundJob[] = [];
  const naming = await services.naming.jobs(company, sought);
  for (const job of (await services.jobs.jobs(company)).filter((one) => naming.has(one))) {
    const entries = await services.ledgers.read({ company, job });
    const mentions = mentionsIn(entries, sought);
    const isTheirs = isCustomerOf(entries, sought);
    const isAuthor = sought.person !== undefined && entries.some(({ envelope }) => envelope.author.person === sought.person);
    if (mentions.length > 0 || isAuthor) jobs.push({ job, entries, mentions, isTheirs, isWhole: isTheirs && whole.has(job) });
  }
  const own = await services.ledgers.read(companyPlace(company));
  const [people, sites, old] = await Promise.all([
    services.companies.people(company),
    services.sites.all(company),
    services.oldWarranties.all(company),
  ]);
  const person = people.find(({ id }) => id === sought.person);
  const theirs = new Set(jobs.filter(({ isTheirs }) => isTheirs).map(({ job }) => job));
  return {
    sought,
    jobs,
    company: { entries: own, mentions: mentionsIn(own, sought) },
    ...(person === undefined ? {} : { person }),
    // the site of a customer's jobs is the customer's, where no other's job lies on it
    sites: sites.filter(
      (site) => isNamedBy(site.content as unknown as Json, sought) || (site.jobs.length > 0 && site.jobs.every((job) => theirs.has(job))),
    ),
    oldWarranties: old.filter(({ customer, address, note }) => isNamedBy([customer, address, note ?? ""], sought)),
  };
}

/** A site without its address, its place or both: its marks stay. */
export const namelessSite = (
  { address, place, heightMark, tieMarks }: Omit<NewSite, "id">,
  without: { readonly names: boolean; readonly places: boolean } = { names: true, places: true },
): Omit<NewSite, "id"> => ({
  address: without.names ? NAMELESS : address,
  ...(place === undefined || without.places ? {} : { place }),
  ...(heightMark === undefined ? {} : { heightMark }),
  ...(tieMarks === undefined ? {} : { tieMarks }),
});

/** What stands where a name was, in every language: nomen nescio. */
export const NAMELESS = "N. N.";
