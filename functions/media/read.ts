import { createHash } from "node:crypto";
import { type Outcome, ok, refuse } from "#core/outcome/index.ts";
import type { PhotoFacts } from "#core/photo/index.ts";
import { originalKey, renditionKey, type Store } from "#functions/shared/index.ts";
import { blank, lookAt, type Threads } from "./look.ts";
import { unreadable } from "./unreadable.ts";

/** Most bytes of an original that are read; the edge takes 25 MB. */
const MOST_BYTES = 26_214_400;

/**
 * Reads one photo of the store: renditions into the store, facts as the value. A photo that no picture can be made of is
 * a fact with `unreadable`. Refused: what is not the photo's fault (`photo-unknown`, `photo-hash-differs` for an object
 * that is not what its name says, `store-unavailable`).
 */
export async function readPhoto(company: string, sha: string, store: Store, threads: Threads): Promise<Outcome<PhotoFacts>> {
  const object = await store.get(originalKey(company, sha));
  if (!object.ok) return object;
  if (object.value.length > MOST_BYTES) {
    await object.value.stream.cancel();
    return ok({
      ...blank(sha, object.value.length),
      unreadable: unreadable("photo-too-large", "", { bytes: object.value.length, most: MOST_BYTES }),
    });
  }
  const read = await object.value.bytes();
  if (!read.ok) return read;
  const bytes = read.value;
  const hash = createHash("sha256").update(bytes).digest("hex");
  if (hash !== sha) return refuse("photo-hash-differs", `photo/${sha}`, { found: hash, bytes: bytes.length });

  const { facts, pictures } = await lookAt(sha, bytes, threads);
  for (const { facts: rendition, jpeg } of pictures?.renditions ?? []) {
    const about = { length: jpeg.length, type: "image/jpeg", sha256: rendition.sha256 };
    const put = await store.put(renditionKey(company, sha, rendition.name), jpeg, about);
    if (!put.ok) return put;
  }
  return ok(facts);
}
