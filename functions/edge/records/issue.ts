import { contentDigest, type Json, type Ledger } from "#core/ledger/index.ts";
import { type Outcome, ok, refuse } from "#core/outcome/index.ts";
import { type RecordModel, recordModel } from "#core/record/index.ts";
import type { RecordMade } from "#core/wire/index.ts";
import type { PrintAttachment } from "#functions/shared/index.ts";
import type { Place } from "../adapters/ledgers.ts";
import type { RecordRow } from "../adapters/records.ts";
import { newId, sha256Hex } from "../chance.ts";
import { appendToJob } from "../jobs/append.ts";
import { follow } from "../jobs/findings.ts";
import { ledgerOf, readJob } from "../jobs/read.ts";
import { fromEdge, PROGRAM } from "../ledger/index.ts";
import type { Services } from "../services.ts";
import { editionOf } from "./edition.ts";
import { fileKey } from "./files.ts";
import { photosKnown } from "./photos.ts";
import { recordView } from "./view.ts";

type Edition = RecordRow["edition"];

const LANE_MS = 180_000;

/**
 * Issues a record: view model from the whole ledger, printed with its edition of the ledger inside, its row and the fact
 * `record-issued` written together. Nothing is written unless the PDF lies in the store. Refuses print-unavailable,
 * print-failed, store-unavailable; database-busy when another record of this job was issued at the same moment.
 */
export async function issue(services: Services, place: Place, edition: Edition, now: number): Promise<Outcome<RecordMade>> {
  return services.lanes.in(`record ${place.company}/${place.job}`, LANE_MS, async () => {
    const draft = await drafted(services, place, edition, now);
    const kept = await keptFiles(services, place, draft);
    if (!kept.ok) return kept;
    const key = fileKey({ ...place, id: draft.id, version: draft.model.title.version }, "pdf");
    const attachments: readonly PrintAttachment[] = [
      { name: "ledger.json", type: "application/json", text: draft.ledgerText, relationship: "Data" },
    ];
    const printed = await services.machines.print({ kind: "record", model: draft.model, key, photos: draft.photos, attachments });
    if (!printed.ok) return printed;
    const { sha256, bytes, pages } = printed.value;
    const { head } = draft.attached;
    const row: RecordRow = {
      id: draft.id,
      job: place.job,
      version: draft.model.title.version,
      edition,
      head_number: head.number,
      head_hash: head.hash,
      pages,
      bytes,
      sha256,
      issued: now,
    };
    const written = await recorded(services, place, row, draft);
    return written.ok ? ok(recordView(row)) : written;
  });
}

interface Draft {
  readonly id: string;
  readonly model: RecordModel;
  readonly attached: Ledger;
  readonly ledgerText: string;
  readonly photos: Readonly<Record<string, string>>;
}

async function drafted(services: Services, place: Place, edition: Edition, now: number): Promise<Draft> {
  const { company } = place;
  const [job, people, rows, earlier, settings] = await Promise.all([
    readJob(services, place),
    services.companies.people(company),
    services.photos.ofJob(place),
    services.records.ofJob(place),
    services.companies.newestOf(company, "settings", "settings").then((row) => row && services.companies.version(company, row.digest)),
  ]);
  const ledger = ledgerOf(place.job, job.stored, job.versions);
  const attached = editionOf(ledger, edition);
  const photos = photosKnown(company, rows);
  const model = recordModel({
    ledger,
    attached,
    edition,
    version: (earlier.at(-1)?.version ?? 0) + 1,
    issuedAt: now,
    settings: settings?.content ?? {},
    people: Object.fromEntries(people.map(({ id, name, role }) => [id, { name, role }])),
    photos,
  });
  const renditions = Object.entries(photos).flatMap(([sha256, { rendition }]) => (rendition === undefined ? [] : [[sha256, rendition]]));
  return { id: newId(), model, attached, ledgerText: JSON.stringify(attached), photos: Object.fromEntries(renditions) };
}

/** The view model and the attached edition lie beside the PDF. */
async function keptFiles({ store }: Services, { company, job }: Place, draft: Draft): Promise<Outcome<null>> {
  const { version } = draft.model.title;
  const texts = { "model.json": JSON.stringify(draft.model), "ledger.json": draft.ledgerText };
  for (const [ending, text] of Object.entries(texts)) {
    const bytes = new TextEncoder().encode(text);
    const about = { length: bytes.length, type: "application/json", sha256: await sha256Hex(text) };
    const put = await store.put(fileKey({ company, job, id: draft.id, version }, ending), bytes, about);
    if (!put.ok) return put;
  }
  return ok(null);
}

async function recorded(services: Services, place: Place, row: RecordRow, { model, attached }: Draft): Promise<Outcome<null>> {
  const modelDigest = await contentDigest(services.digest, model as unknown as Json);
  if (!modelDigest.ok) throw new Error(`a view model without a canonical form: ${modelDigest.refusal.place}`);
  const what = { version: row.version, head: { ...attached.head }, modelDigest: modelDigest.value, edition: row.edition };
  const fact = fromEdge(services.digest, {
    job: place.job,
    id: newId(),
    kind: "record-issued",
    person: PROGRAM,
    writer: "program",
    at: row.issued,
    contents: { what },
  });
  const appended = await appendToJob(services, place, [fact], row.issued, {
    whole: true,
    also: () => [services.records.add(place.company, row)],
  });
  if (!appended.ok) return appended.refusal.code === "database-busy" ? refuse("database-busy", "record", {}) : appended;
  await follow(services, place);
  return ok(null);
}
