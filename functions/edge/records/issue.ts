import { contentDigest, type Json } from "#core/ledger/index.ts";
import { type Outcome, ok, refuse } from "#core/outcome/index.ts";
import { type RecordModel, recordModel } from "#core/record/index.ts";
import type { NewRecord, RecordMade } from "#core/wire/index.ts";
import type { PrintRecord } from "#functions/shared/index.ts";
import type { Place } from "../adapters/ledgers.ts";
import type { RecordRow } from "../adapters/records.ts";
import { newId, sha256Hex } from "../chance.ts";
import type { Author } from "../company/change.ts";
import { appendToJob } from "../jobs/append.ts";
import { ledgerOf, readJob } from "../jobs/read.ts";
import { fromEdge, PROGRAM } from "../ledger/index.ts";
import { signingKey } from "../seals/index.ts";
import type { Services } from "../services.ts";
import { modelBefore } from "./before.ts";
import { editionOf } from "./edition.ts";
import { fileKey } from "./files.ts";
import { markKnown, photosKnown, picturesToPrint } from "./photos.ts";
import { attachmentsOf, findingsText, sealPrinted, type ToSeal } from "./sealing.ts";
import { recordView } from "./view.ts";

const LANE_MS = 180_000;

/**
 * Issues a record: view model from the whole ledger, printed with its edition of the ledger inside, sealed with the company's
 * key, its row and the fact `record-issued` written together. Nothing is written unless the sealed PDF lies in the store. Refuses
 * print-unavailable, print-failed, store-unavailable; seal-key-missing, seal-key-unreadable; database-busy when another record of
 * this job was issued at the same moment.
 */
export async function issue(services: Services, place: Place, asked: NewRecord, author: Author, now: number): Promise<Outcome<RecordMade>> {
  return services.lanes.in(`record ${place.company}/${place.job}`, LANE_MS, async () => {
    const key = await signingKey(services, author);
    if (!key.ok) return key;
    const draft = await drafted(services, place, asked, key.value.kid, now);
    const at = fileKey({ ...place, id: draft.id, version: draft.model.title.version }, "pdf");
    const attachments = attachmentsOf(draft.texts);
    const [kept, drawn] = await Promise.all([
      keptFiles(services, place, draft),
      services.machines.print({ kind: "record", model: draft.model, key: at, photos: draft.photos, attachments }),
    ]);
    if (!kept.ok) return kept;
    if (!drawn.ok) return drawn;
    const toSeal = { ...draft, company: place.company, job: place.job, record: draft.id };
    const sealed = await sealPrinted(services, key.value, toSeal, { at, printed: drawn.value });
    if (!sealed.ok) return sealed;
    const { sha256, bytes, pages } = sealed.value.printed;
    const { head } = draft.attached;
    const row: RecordRow = {
      id: draft.id,
      job: place.job,
      version: draft.model.title.version,
      edition: asked.edition,
      head_number: head.number,
      head_hash: head.hash,
      pages,
      bytes,
      sha256,
      issued: now,
    };
    const seal = await sha256Hex(sealed.value.seal);
    const written = await recorded(services, place, row, draft, { seal, key: key.value.kid });
    return written.ok ? ok(recordView(row)) : written;
  });
}

interface Draft extends Pick<ToSeal, "attached" | "modelDigest" | "texts"> {
  readonly id: string;
  readonly model: RecordModel;
  readonly photos: PrintRecord["photos"];
}

async function drafted(services: Services, place: Place, asked: NewRecord, key: string, now: number): Promise<Draft> {
  const { company } = place;
  const { edition, ...receiver } = asked;
  const [job, people, rows, earlier, settings] = await Promise.all([
    readJob(services, place),
    services.companies.people(company),
    services.photos.ofJob(place),
    services.records.ofJob(place),
    services.companies.newestOf(company, "settings", "settings").then((row) => row && services.companies.version(company, row.digest)),
  ]);
  const before = await modelBefore(services, place, earlier, edition);
  const ledger = ledgerOf(place.job, job.stored, job.versions);
  const attached = editionOf(ledger, edition);
  const mark = markKnown(company, settings?.content);
  const model = recordModel({
    ...(before === undefined ? {} : { before }),
    key,
    ledger,
    attached,
    edition,
    receiver,
    version: (earlier.at(-1)?.version ?? 0) + 1,
    issuedAt: now,
    settings: settings?.content ?? {},
    people: Object.fromEntries(people.map(({ id, name, role }) => [id, { name, role }])),
    photos: { ...photosKnown(company, rows), ...mark },
  });
  const modelDigest = await contentDigest(services.digest, model as unknown as Json);
  if (!modelDigest.ok) throw new Error(`a view model without a canonical form: ${modelDigest.refusal.place}`);
  const findings = findingsText(ledger, attached, now);
  const texts = { findings, ledger: JSON.stringify(attached), model: JSON.stringify(model) };
  return { id: newId(), model, modelDigest: modelDigest.value, attached, texts, photos: picturesToPrint(company, rows, mark) };
}

/** The view model, the attached edition and its findings lie beside the PDF. */
async function keptFiles({ store }: Services, { company, job }: Place, draft: Draft): Promise<Outcome<null>> {
  const { version } = draft.model.title;
  const { model, ledger, findings } = draft.texts;
  const texts = { "model.json": model, "ledger.json": ledger, "findings.json": findings };
  const kept = Object.entries(texts).map(async ([ending, text]) => {
    const bytes = new TextEncoder().encode(text);
    const about = { length: bytes.length, type: "application/json", sha256: await sha256Hex(text) };
    return store.put(fileKey({ company, job, id: draft.id, version }, ending), bytes, about);
  });
  return (await Promise.all(kept)).find((put) => !put.ok) ?? ok(null);
}

async function recorded(
  services: Services,
  place: Place,
  row: RecordRow,
  { modelDigest, attached }: Draft,
  sealed: { readonly seal: string; readonly key: string },
): Promise<Outcome<null>> {
  const what = { version: row.version, head: { ...attached.head }, modelDigest, edition: row.edition, ...sealed };
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
  if (appended.ok) return ok(null);
  return appended.refusal.code === "database-busy" ? refuse("database-busy", "record", {}) : appended;
}
