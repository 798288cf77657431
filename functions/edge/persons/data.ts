import { isWithheld, type Json, type LedgerEntry, partNames } from "#core/ledger/index.ts";
import type { PersonRequest } from "#core/wire/index.ts";
import type { Found } from "./found.ts";

const isoOf = (milliseconds: number): string => new Date(milliseconds).toISOString();

/** An entry with the parts of it that name the person, as they were entered. */
function entryData({ envelope, body }: LedgerEntry, parts: ReadonlySet<string>): Json {
  const { number, kind, made, received } = envelope;
  const said = partNames.flatMap((part): readonly [string, Json][] => {
    const there = body[part];
    return there === undefined || isWithheld(there) || !parts.has(part) ? [] : [[part, there.content]];
  });
  return { number, kind, made: isoOf(made), received: isoOf(received), ...Object.fromEntries(said) };
}

function mentioned(entries: readonly LedgerEntry[], mentions: readonly { readonly id: string; readonly part: string }[]): Json {
  const parts = new Map<string, Set<string>>();
  for (const { id, part } of mentions) parts.set(id, (parts.get(id) ?? new Set()).add(part));
  return entries.flatMap((entry) => {
    const named = parts.get(entry.envelope.id);
    return named === undefined ? [] : [entryData(entry, named)];
  });
}

/** The whole `who` and `where` of the person's own jobs: address, contacts and place of the site. */
function ownParts(entries: readonly LedgerEntry[]): readonly { readonly id: string; readonly part: string }[] {
  return entries.flatMap(({ envelope: { id }, body }) => (["who", "where"] as const).flatMap((part) => (body[part] ? [{ id, part }] : [])));
}

/** Everything that names a person, in a form that other programs read: JSON, moments as ISO 8601 in UTC, measures as they were entered. */
export function dataOf(request: PersonRequest, found: Found, company: string, now: number): Json {
  const { person, sites, oldWarranties } = found;
  const entered = (entries: readonly LedgerEntry[]): Json =>
    entries
      .filter(({ envelope }) => person !== undefined && envelope.author.person === person.id)
      .map(({ envelope: { number, kind, made } }) => ({ number, kind, made: isoOf(made) }));
  return {
    company,
    taken: isoOf(now),
    asked: { names: request.names, contacts: request.contacts, day: request.day },
    ...(person === undefined ? {} : { person: { id: person.id, name: person.name, role: person.role, came: isoOf(person.came) } }),
    jobs: found.jobs.map(({ job, entries, mentions, isTheirs }) => ({
      job,
      isCustomer: isTheirs,
      names: mentioned(entries, isTheirs ? [...mentions, ...ownParts(entries)] : mentions),
      entered: entered(entries),
    })),
    companyLedger: mentioned(found.company.entries, found.company.mentions),
    sites: sites.map(({ id, content }) => ({ id, ...(content as unknown as { readonly [key: string]: Json }) })),
    oldWarranties: oldWarranties as unknown as Json,
  };
}
