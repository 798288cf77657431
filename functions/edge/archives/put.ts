import { type Outcome, ok, refuse } from "#core/outcome/index.ts";
import type { ArchiveFile } from "#core/wire/index.ts";
import { hex } from "../chance.ts";
import { StorePatience } from "../photos/patience.ts";
import type { Services } from "../services.ts";
import type { ArchiveEntries } from "./entries.ts";
import type { StoredFile } from "./files.ts";

const differs = ({ name }: ArchiveFile) => refuse("archive-part-differs", name, {});

/** Reads one file to its end and compares it with the list, without keeping it. */
export async function compared(entries: ArchiveEntries, file: ArchiveFile): Promise<Outcome<null>> {
  const digest = new crypto.DigestStream("SHA-256");
  digest.digest.catch(() => undefined);
  const writer = digest.getWriter();
  let count = 0;
  for await (const block of entries.bytes(file.bytes)) {
    count += block.length;
    await writer.write(block);
  }
  await writer.close();
  const found = hex(new Uint8Array(await digest.digest));
  return count === file.bytes && found === file.sha256 ? ok(null) : differs(file);
}

/**
 * Streams one file into the store under its key, its digest taken on the way; the last block waits for the digest, so that a store
 * that behaves never has a wrong object. What a broken-off try leaves has no row, and nobody is given it.
 */
export async function putFile(services: Services, entries: ArchiveEntries, { file, key, type }: StoredFile): Promise<Outcome<null>> {
  const fixed = new FixedLengthStream(file.bytes);
  const patience = new StorePatience();
  const about = { length: file.bytes, type, sha256: file.sha256, givenUp: patience.signal };
  const putting = services.store.put(key, fixed.readable, about);
  const givenUp = putting.then((put) => (put.ok ? new Promise<never>(() => {}) : Promise.reject(new Error("store"))));
  givenUp.catch(() => undefined);
  const pumped = await pump(entries, file, fixed.writable, (work) => patience.over(Promise.race([work, givenUp])));
  const put = await patience.over(putting).catch(() => refuse("store-unavailable", file.name, { why: "silent" }));
  if (pumped.ok) return put.ok ? ok(null) : put;
  return !put.ok && put.refusal.code === "store-unavailable" && pumped.refusal.code === "store-unavailable" ? put : pumped;
}

async function pump(
  entries: ArchiveEntries,
  file: ArchiveFile,
  to: WritableStream<Uint8Array>,
  stored: (work: Promise<void>) => Promise<void>,
): Promise<Outcome<null>> {
  const digest = new crypto.DigestStream("SHA-256");
  digest.digest.catch(() => undefined);
  const hash = digest.getWriter();
  const out = to.getWriter();
  let held: Uint8Array | undefined;
  let count = 0;
  const stop = (refused: ReturnType<typeof refuse>) => {
    out.abort(refused.refusal.code).catch(() => undefined);
    hash.abort(refused.refusal.code).catch(() => undefined);
    return refused;
  };
  try {
    for await (const block of entries.bytes(file.bytes)) {
      if (held) await stored(out.write(held));
      count += block.length;
      await hash.write(block);
      held = block;
    }
    await hash.close();
    if (count !== file.bytes || hex(new Uint8Array(await digest.digest)) !== file.sha256) return stop(differs(file));
    if (held) await stored(out.write(held));
    await stored(out.close());
    return ok(null);
  } catch (thrown) {
    return stop(refuse("store-unavailable", file.name, { why: thrown instanceof Error ? thrown.name : "unknown" }));
  }
}
