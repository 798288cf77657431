import type { Body } from "#core/ledger/index.ts";
import { type PartName, withhold } from "#core/ledger/index.ts";
import type { Place, StoredEntry } from "../adapters/ledgers.ts";
import type { Statement } from "../adapters/statement.ts";
import { contentOf } from "../ledger/index.ts";
import type { Services } from "../services.ts";

/** How long the queue has before the sweep does it. */
export const FIRST_DUE_MS = 10_000;

const namesPhoto: ReadonlySet<string> = new Set([
  "picture-taken",
  "received-otherwise",
  "paper-added",
  "inspected-by-authority",
  "done-by-others",
]);

/** Hashes of the photos that an entry names. */
export function photosNamed({ envelope, body }: Pick<StoredEntry, "envelope" | "body">): readonly string[] {
  if (!namesPhoto.has(envelope.kind)) return [];
  const photo = (contentOf(body, "what") as { photo?: unknown } | undefined)?.photo;
  return typeof photo === "string" ? [photo] : [];
}

/** Hashes under which an entry names a paper: its PDF, or what a holder of a link sent, which may be a picture as well. */
export function papersNamed({ body }: Pick<StoredEntry, "body">): readonly string[] {
  const { pdf, paper } = (contentOf(body, "what") as { pdf?: unknown; paper?: unknown } | undefined) ?? {};
  return [pdf, paper].filter((sha256) => typeof sha256 === "string" && /^[0-9a-f]{64}$/.test(sha256)) as readonly string[];
}

/** What goes with new entries of a job into the same batch: the photos they name, and what is owed to the job about them. */
export function usesOf(services: Services, place: Place, rows: readonly StoredEntry[]): readonly Statement[] {
  const named = [...new Set(rows.flatMap((row) => [...photosNamed(row), ...photosMovedIn(row)]))];
  const now = services.clock();
  // Entries moved in are no new use of their photos: a move is not taken for re-use.
  const uses = rows.flatMap((row) => photosNamed(row).map((sha256) => ({ sha256, made: madeAt(row) })));
  return [...services.photos.use(place, named, now + FIRST_DUE_MS), ...services.seenPairs.named(place, uses, now)];
}

/** The app's own moment of capture where there is one, else when the entry was made. */
function madeAt({ envelope, body }: StoredEntry): number {
  const taken = (contentOf(body, "what") as { taken?: unknown } | undefined)?.taken;
  return typeof taken === "number" ? taken : envelope.made;
}

function photosMovedIn({ envelope, body }: StoredEntry): readonly string[] {
  if (envelope.kind !== "moved-in") return [];
  // an archive's ledger chains, and may still say anything
  const entries = (contentOf(body, "what") as { entries?: unknown } | null | undefined)?.entries;
  if (!Array.isArray(entries)) return [];
  return entries.flatMap((one: { what?: { photo?: unknown } | null } | null) =>
    typeof one?.what?.photo === "string" ? [one.what.photo] : [],
  );
}

/** Takes the bodies out that new entries of kind body-withheld name; the envelopes stay, so the chain still verifies. */
export function withheldBodies(
  services: Services,
  place: Place,
  rows: readonly StoredEntry[],
  before: readonly StoredEntry[],
): readonly Statement[] {
  const bodies = new Map<string, Body>();
  for (const { envelope, body } of rows) {
    if (envelope.kind !== "body-withheld") continue;
    const what = contentOf(body, "what") as { entry: { id: string }; parts: readonly PartName[] };
    const target = [...before, ...rows].find((row) => row.envelope.id === what.entry.id);
    if (!target) continue;
    const entry = { envelope: target.envelope, body: bodies.get(what.entry.id) ?? target.body };
    const edited = withhold(entry, what.parts, "erasure");
    if (edited.ok) bodies.set(what.entry.id, edited.value.body);
  }
  // an older backup must not bring them back
  const erased = rows.flatMap(({ envelope, body }) => {
    const what = contentOf(body, "what") as { entry: { id: string }; parts: readonly PartName[] } | undefined;
    return envelope.kind === "body-withheld" && what !== undefined && bodies.has(what.entry.id)
      ? [{ kind: "body" as const, ref: `${place.job}/${what.entry.id}`, content: JSON.stringify(what.parts) }]
      : [];
  });
  return [
    ...[...bodies].map(([id, body]) => services.ledgers.replaceBody(place, id, body)),
    ...services.erasing.note(place.company, erased, services.clock()),
  ];
}
