import { type Json, seal } from "../../../ledger/index.ts";
import type { Outcome } from "../../../outcome/index.ts";
import type { SentEntry } from "../../../wire/index.ts";
import { digest } from "../../parts/digest.ts";
import { chance } from "./chance.ts";
import { type Database, readAbout, settled, strictly } from "./database.ts";
import type { OwnEntry, OwnPhoto } from "./shapes.ts";

/** What somebody enters. `made` is the phone's clock. */
export interface Entering {
  readonly job: string;
  readonly kind: string;
  readonly person: string;
  readonly made: number;
  readonly what: Json;
  readonly who?: Json;
  readonly where?: Json;
  /** The place of the draft that this was; gone when this is kept, so that a phone that dies between does not offer it once more. */
  readonly draft?: string;
}

export interface Photo {
  readonly sha256: string;
  readonly bytes: ArrayBuffer;
  readonly type: string;
  readonly taken: number;
}

/** The phone's id and its next running number; both tabs of one phone draw from the same numbers. */
export async function nextRun(database: Database): Promise<{ readonly phone: string; readonly run: number }> {
  // not flushed by itself: the store writes in order, so whatever entry is kept under the number keeps the number too
  const transaction = database.transaction("about", "readwrite", { durability: "relaxed" });
  const known = (await transaction.store.get("phone")) as { id: string; run: number } | undefined;
  const phone = known ?? { id: chance(16), run: 0 };
  await settled(transaction, transaction.store.put({ id: phone.id, run: phone.run + 1 }, "phone"));
  return { phone: phone.id, run: phone.run };
}

async function sealed(database: Database, entering: Entering): Promise<Outcome<OwnEntry>> {
  const { job, kind, person, made, what, who, where } = entering;
  const { phone, run } = await nextRun(database);
  const contents = { what, ...(who === undefined ? {} : { who }), ...(where === undefined ? {} : { where }) };
  const salts = Object.fromEntries(Object.keys(contents).map((part) => [part, chance(32)]));
  const id = chance(16);
  const outcome = await seal(digest, { job, id, kind, author: { person, phone }, run, made, contents, salts });
  if (!outcome.ok) return outcome;
  return { ok: true, value: { run, job, id, entry: outcome.value as unknown as SentEntry, standing: "not sent" } };
}

/**
 * Seals what was entered and keeps it, with the bytes of its photo where it has one: both or neither.
 * `meanwhile` is done while it is written. Refuses what has no canonical form; rejects with `QuotaExceededError` when the phone has no room.
 */
export async function enter(
  database: Database,
  entering: Entering,
  photo?: Photo,
  meanwhile: (own: OwnEntry) => void = () => {},
): Promise<Outcome<OwnEntry>> {
  const outcome = await sealed(database, entering);
  if (!outcome.ok) return outcome;
  const own = outcome.value;
  const transaction = database.transaction(["entries", "photos", "bytes", "drafts"], "readwrite", strictly);
  const writes: Promise<unknown>[] = [transaction.objectStore("entries").add(own)];
  if (entering.draft !== undefined) writes.push(transaction.objectStore("drafts").delete(entering.draft));
  if (photo !== undefined)
    writes.push(...photoWrites(transaction, photo, { job: own.job, run: own.run }, await keptBefore(transaction, photo)));
  // apart from the writing: what goes wrong there takes no entry with it
  void Promise.resolve(own).then(meanwhile);
  await settled(transaction, ...writes);
  return outcome;
}

type PhotoStores = {
  objectStore(name: "photos"): { put(value: OwnPhoto): Promise<unknown>; get(key: string): Promise<OwnPhoto | undefined> };
  objectStore(name: "bytes"): { put(value: { sha256: string; bytes: ArrayBuffer }): Promise<unknown> };
};

const keptBefore = (transaction: unknown, { sha256: name }: Photo): Promise<OwnPhoto | undefined> =>
  (transaction as PhotoStores).objectStore("photos").get(name);

/** The same photo put to a second picture is kept once; one that was acknowledged is not sent again. */
function photoWrites(
  transaction: unknown,
  photo: Photo,
  { job, run }: { readonly job: string; readonly run: number },
  before: OwnPhoto | undefined,
): Promise<unknown>[] {
  const stores = transaction as PhotoStores;
  const { sha256: name, bytes, type, taken } = photo;
  if (before !== undefined && before.standing !== "lost") {
    const { loose: _, ...settled } = before;
    return before.loose ? [stores.objectStore("photos").put({ ...settled, job })] : [];
  }
  return [
    stores.objectStore("photos").put({ sha256: name, job, run, type, bytes: bytes.byteLength, taken, standing: "not sent" }),
    stores.objectStore("bytes").put({ sha256: name, bytes }),
  ];
}

/** A photo of a burst: its bytes are kept and sent, and it waits to be put to a picture. */
export async function keepLoose(database: Database, job: string, photo: Photo): Promise<void> {
  const transaction = database.transaction(["photos", "bytes", "about"], "readwrite", strictly);
  const before = await keptBefore(transaction, photo);
  const phone = (await transaction.objectStore("about").get("phone")) as { run: number } | undefined;
  if (before === undefined) {
    const { sha256: name, bytes, type, taken } = photo;
    const kept: OwnPhoto = {
      sha256: name,
      job,
      run: phone?.run ?? 0,
      type,
      bytes: bytes.byteLength,
      taken,
      standing: "not sent",
      loose: true,
    };
    const writes = [transaction.objectStore("photos").put(kept), transaction.objectStore("bytes").put({ sha256: name, bytes })];
    await settled(transaction, ...writes);
  }
  await transaction.done;
}

/** A photo that was never put to a picture waits in another job from now on; one that was is left alone. */
export async function moveLoose(database: Database, sha256: string, job: string): Promise<void> {
  const transaction = database.transaction("photos", "readwrite", strictly);
  const photo = await transaction.store.get(sha256);
  if (photo?.loose) await transaction.store.put({ ...photo, job });
  await transaction.done;
}

/** Forgets a photo that was never put to a picture; one that was is left alone. */
export async function removeLoose(database: Database, sha256: string): Promise<void> {
  const transaction = database.transaction(["photos", "bytes", "small"], "readwrite", strictly);
  if ((await transaction.objectStore("photos").get(sha256))?.loose)
    for (const store of ["photos", "bytes", "small"] as const) await transaction.objectStore(store).delete(sha256);
  await transaction.done;
}

const magics: readonly (readonly [string, (bytes: Uint8Array, text: string) => boolean])[] = [
  ["image/jpeg", (bytes) => bytes[0] === 0xff && bytes[1] === 0xd8],
  ["image/png", (_, text) => text.startsWith("\u0089PNG")],
  ["image/webp", (_, text) => text.startsWith("RIFF") && text.slice(8, 12) === "WEBP"],
  ["image/avif", (_, text) => text.slice(4, 8) === "ftyp" && /^avi[fs]/.test(text.slice(8))],
  ["image/heic", (_, text) => text.slice(4, 8) === "ftyp" && /^(heic|heix|hevc|heim|heis|mif1|msf1)/.test(text.slice(8))],
  ["image/gif", (_, text) => text.startsWith("GIF8")],
];

/** A file of the camera or of the phone's pictures, whole and as it is: never drawn again, never shrunk. */
export async function photoOf(file: Blob, taken: number): Promise<Photo> {
  const bytes = await file.arrayBuffer();
  const first = new Uint8Array(bytes, 0, Math.min(16, bytes.byteLength));
  const text = String.fromCharCode(...first);
  const type = magics.find(([, is]) => is(first, text))?.[0] ?? file.type;
  return { sha256: await digest(new Uint8Array(bytes)), bytes, type, taken };
}

export const phoneId = async (database: Database): Promise<string | undefined> => (await readAbout(database, "phone"))?.id;
