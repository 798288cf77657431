import { type Outcome, ok, type Refusal, refuse } from "#core/outcome/index.ts";
import { LARGEST_PHOTO } from "#core/wire/index.ts";
import { originalKey, sniff, whyNoPhoto } from "#functions/shared/index.ts";
import { hex } from "../chance.ts";
import { FIRST_DUE_MS } from "../jobs/consequences.ts";
import type { Services } from "../services.ts";
import { Blocks } from "./blocks.ts";
import { StorePatience } from "./patience.ts";
import { stillKept } from "./still-kept.ts";

export interface Upload {
  readonly company: string;
  readonly sha256: string;
  /** As the header says it. */
  readonly length: string | null;
  readonly body: ReadableStream<Uint8Array> | null;
}

export interface Stored {
  readonly sha256: string;
  readonly bytes: number;
  readonly type: string;
  readonly before: boolean;
}

/** A second upload of the same photo waits for the first, which ends by itself when its phone falls silent. */
const LANE_MS = 150_000;

/**
 * Streams a photo into the store in blocks, its hash taken on the way; the last block waits for the hash, so that a store
 * that behaves never has a wrong object. The row, and that it is owed a reading, are written after the store has it all.
 * Refuses photo-length-required, photo-empty, photo-too-large, photo-type, photo-is-film, photo-length-differs,
 * photo-hash-differs and store-unavailable, each with the body read to its end first.
 */
export async function upload(services: Services, asked: Upload): Promise<Outcome<Stored>> {
  const blocks = new Blocks(asked.body);
  const outcome = await services.lanes.in(`photo ${asked.company}/${asked.sha256}`, LANE_MS, () => taken(services, asked, blocks));
  // An answer sent before the body is read reaches some phones as a broken connection.
  await blocks.discard(LARGEST_PHOTO + 2_097_152);
  return outcome;
}

async function taken(services: Services, { company, sha256, length }: Upload, blocks: Blocks): Promise<Outcome<Stored>> {
  const place = `photos/${sha256}`;
  const key = originalKey(company, sha256);
  const [there, first] = await Promise.all([services.photos.get(company, sha256), blocks.next().catch(() => undefined)]);
  const kept = there ? await stillKept(services, key, there.bytes) : ok(false);
  if (!kept.ok) return kept;
  if (there && kept.value) return ok({ sha256, bytes: there.bytes, type: there.type, before: true });
  const bytes = lengthOf(length, place);
  if (!bytes.ok) return bytes;
  if (first === undefined) return refuse("photo-length-differs", place, { bytes: 0, announced: bytes.value });
  const type = sniff(first);
  if (type === undefined) return refuse(whyNoPhoto(first), place, {});
  const stored = await streamed(services, { key, sha256, bytes: bytes.value, type, place }, first, blocks);
  if (!stored.ok) return stored;
  const now = services.clock();
  await services.photos.add(company, { sha256, bytes: bytes.value, type }, now, now + FIRST_DUE_MS);
  return ok({ sha256, bytes: bytes.value, type, before: false });
}

/** Bytes as the header says them; `most`: of the largest that is taken. */
export function lengthOf(header: string | null, place: string, most: number = LARGEST_PHOTO): Outcome<number> {
  if (header === null || !/^\d{1,15}$/.test(header)) return refuse("photo-length-required", place, {});
  const bytes = Number(header);
  if (bytes === 0) return refuse("photo-empty", place, {});
  return bytes > most ? refuse("photo-too-large", place, { bytes, most }) : ok(bytes);
}

interface Target {
  readonly key: string;
  readonly sha256: string;
  readonly bytes: number;
  readonly type: string;
  readonly place: string;
}

/** Streams what comes into the store; its last block waits for the hash. */
export async function streamed(services: Services, target: Target, first: Uint8Array, blocks: Blocks): Promise<Outcome<null>> {
  const fixed = new FixedLengthStream(target.bytes);
  const patience = new StorePatience();
  const about = { length: target.bytes, type: target.type, sha256: target.sha256, givenUp: patience.signal };
  const putting = services.store.put(target.key, fixed.readable, about);
  // A store that gives up reads no more: without this the next block would wait for ever.
  const givenUp = putting.then((put) => (put.ok ? new Promise<never>(() => {}) : Promise.reject(new Error("store"))));
  givenUp.catch(() => undefined);
  const pumping = pump(first, blocks, fixed.writable, target, (work) => patience.over(Promise.race([work, givenUp])));
  const late = () => refuse("store-unavailable", target.place, { why: "silent" });
  const [fault, put] = await Promise.all([pumping, pumping.then(() => patience.over(putting)).catch(late)]);
  if (!fault && put.ok) return ok(null);
  // Nothing is removed: by now another upload of this photo, on another machine, may have been acknowledged under this
  // name. Half an object of a lax store has no row, so nobody is given it, and the next upload replaces it.
  if (!put.ok && (!fault || fault.code === "store-unavailable")) return put;
  return { ok: false, refusal: fault ?? refuse("store-unavailable", target.place, {}).refusal };
}

async function pump(
  first: Uint8Array,
  blocks: Blocks,
  to: WritableStream<Uint8Array>,
  target: Target,
  stored: (work: Promise<void>) => Promise<void>,
): Promise<Refusal | undefined> {
  const digest = new crypto.DigestStream("SHA-256");
  // Ended by us on every way out; without this an aborted digest would be a rejection that nobody waits for.
  digest.digest.catch(() => undefined);
  const hash = digest.getWriter();
  const out = to.getWriter();
  let held = first;
  let count = 0;
  const stop = (refusal: Refusal): Refusal => {
    out.abort(refusal.code).catch(() => undefined);
    hash.abort(refusal.code).catch(() => undefined);
    return refusal;
  };
  try {
    for (;;) {
      count += held.length;
      // By its place and not by what follows: a block goes on while the next one comes and this one is hashed.
      const isLast = count >= target.bytes;
      const [next] = await Promise.all([blocks.next(), hash.write(held), isLast ? undefined : stored(out.write(held))]);
      if (next === undefined) break;
      if (isLast)
        return stop(refuse("photo-length-differs", target.place, { bytes: count + next.length, announced: target.bytes }).refusal);
      held = next;
    }
    if (count !== target.bytes)
      return stop(refuse("photo-length-differs", target.place, { bytes: count, announced: target.bytes }).refusal);
    await hash.close();
    const found = hex(new Uint8Array(await digest.digest));
    if (found !== target.sha256) return stop(refuse("photo-hash-differs", target.place, { found }).refusal);
    await stored(out.write(held));
    await stored(out.close());
    return undefined;
  } catch (thrown) {
    // The store closed its end, or the phone did; whether the store answered is known to the one who asked it.
    return blocks.broken
      ? stop(refuse("photo-length-differs", target.place, { bytes: count, announced: target.bytes }).refusal)
      : stop(refuse("store-unavailable", target.place, { why: thrown instanceof Error ? thrown.name : "unknown" }).refusal);
  }
}
