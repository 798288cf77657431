import type { Withholding } from "#core/keeping/index.ts";
import { type Body, type PartName, withhold } from "#core/ledger/index.ts";
import { type Outcome, ok } from "#core/outcome/index.ts";
import type { ErasedRow } from "../adapters/erased.ts";
import type { Place, StoredEntry } from "../adapters/ledgers.ts";
import { newId, sha256Hex } from "../chance.ts";
import type { Author, Change } from "../company/change.ts";
import { appendToJob } from "../jobs/append.ts";
import { follow } from "../jobs/findings.ts";
import { append, fromEdge, type Incoming } from "../ledger/index.ts";
import type { Services } from "../services.ts";

/** One `body-withheld` for each body, named by what it withholds, so that asked again it is the same entry. */
const entriesFor = (
  services: Services,
  author: Author,
  place: Place,
  stored: readonly StoredEntry[],
  bodies: readonly Withholding[],
  reason: string,
): Promise<readonly Incoming[]> => {
  const digests = new Map(stored.map(({ envelope, digest }) => [envelope.id, digest]));
  const at = services.clock();
  return Promise.all(
    bodies.map(async ({ id, parts }) =>
      fromEdge(services.digest, {
        job: place.job,
        id: (await sha256Hex(`body-withheld ${place.job} ${id} ${parts.join(" ")}`)).slice(0, 32),
        kind: "body-withheld",
        person: author.person,
        writer: author.role,
        at,
        contents: { what: { entry: { id, digest: digests.get(id) ?? "" }, parts: [...parts], reason } },
        once: true,
      }),
    ),
  );
};

/** Withholds bodies of a job, and notes them as erased. The findings follow. */
export async function withholdInJob(
  services: Services,
  author: Author,
  place: Place,
  bodies: readonly Withholding[],
  reason: string,
): Promise<Outcome<null>> {
  if (bodies.length === 0) return ok(null);
  const stored = await services.ledgers.read(place);
  const incoming = await entriesFor(services, author, place, stored, bodies, reason);
  const appended = await appendToJob(services, place, incoming, services.clock(), { whole: true });
  if (!appended.ok) return appended;
  await follow(services, place);
  return ok(null);
}

/** The same in the company's own ledger, which has no findings; `told`: an entry that is written in the same batch. */
export async function withholdInCompany(
  services: Services,
  author: Author,
  place: Place,
  bodies: readonly Withholding[],
  reason: string,
  told?: Change,
): Promise<Outcome<null>> {
  if (bodies.length === 0 && told === undefined) return ok(null);
  const stored = await services.ledgers.read(place);
  const withheld = await entriesFor(services, author, place, stored, bodies, reason);
  const incoming = told === undefined ? withheld : [...withheld, entryOf(services, author, place, told)];
  const replaced = bodies.flatMap(({ id, parts }): readonly { id: string; body: Body }[] => {
    const entry = stored.find(({ envelope }) => envelope.id === id);
    const edited = entry && withhold(entry, parts, "erasure");
    return edited?.ok ? [{ id, body: edited.value.body }] : [];
  });
  const statements = replaced.map(({ id, body }) => services.ledgers.replaceBody(place, id, body));
  const rows = erasedBodies(bodies);
  const appended = await append(services, place, incoming, services.clock(), {
    whole: true,
    also: () => [...services.erasing.note(place.company, rows, services.clock()), ...statements],
  });
  return appended.ok ? ok(null) : appended;
}

const entryOf = ({ digest, clock }: Services, author: Author, place: Place, { id = newId(), kind, what }: Change): Incoming =>
  fromEdge(digest, {
    job: place.job,
    id,
    kind,
    person: author.person,
    writer: author.role,
    at: clock(),
    contents: { what },
    once: true,
  });

/** As the table of what was erased says it. */
export const erasedBodies = (bodies: readonly { readonly job: string; readonly id: string; readonly parts: readonly PartName[] }[]) =>
  bodies.map(({ job, id, parts }): ErasedRow => ({ kind: "body", ref: `${job}/${id}`, content: JSON.stringify(parts) }));
