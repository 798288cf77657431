import { createHash } from "node:crypto";
import { type Outcome, ok, type RefusalCode, refuse } from "#core/outcome/index.ts";
import type { PhotoFacts, PhotoType, Unreadable } from "#core/photo/index.ts";
import { originalKey, renditionKey, SNIFF_BYTES, type Store, sniff } from "#functions/shared/index.ts";
import type { HeicDecoder } from "./heic.ts";
import { heicProfile } from "./heic-profile.ts";
import { type Metadata, readMetadata } from "./metadata.ts";
import { MOST_PIXELS, makePictures, open, type Pictures, readHeader } from "./pictures.ts";
import { tiffOf } from "./tiff.ts";

/** Most bytes of an original that are read; the edge takes 25 MB. */
const MOST_BYTES = 26_214_400;

/**
 * Reads one photo of the store: renditions into the store, facts as the value. A photo that no picture can be made of is
 * a fact with `unreadable`. Refused: what is not the photo's fault (`photo-unknown`, `photo-hash-differs` for an object
 * that is not what its name says, `store-unavailable`).
 */
export async function readPhoto(company: string, sha: string, store: Store, heic: HeicDecoder): Promise<Outcome<PhotoFacts>> {
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

  const { facts, pictures } = await look(sha, bytes, heic);
  for (const { facts: rendition, jpeg } of pictures?.renditions ?? []) {
    const about = { length: jpeg.length, type: "image/jpeg", sha256: rendition.sha256 };
    const put = await store.put(renditionKey(company, sha, rendition.name), jpeg, about);
    if (!put.ok) return put;
  }
  return ok(facts);
}

interface Looked {
  readonly facts: PhotoFacts;
  readonly pictures?: Pictures;
}

async function look(sha: string, bytes: Uint8Array, heic: HeicDecoder): Promise<Looked> {
  const none = blank(sha, bytes.length);
  if (bytes.length === 0) return { facts: { ...none, unreadable: unreadable("photo-empty", "") } };
  const type = sniff(bytes.subarray(0, SNIFF_BYTES));
  if (type === undefined) return { facts: { ...none, unreadable: unreadable("photo-type", "") } };

  const header = await readHeader(bytes).catch((thrown: Error) => thrown);
  const failed = header instanceof Error;
  const metadata = await readMetadata(bytes, type, failed ? undefined : header.metadataBlock);
  // Containers with a turn of their own go by that one; the camera's tag repeats it and must not turn a second time.
  const orientation = type === "image/heic" || type === "image/avif" ? 1 : metadata.orientation;
  const known: PhotoFacts = { ...none, ...metadata, orientation, type, ...(failed ? {} : { width: header.width, height: header.height }) };
  if (failed && type !== "image/heic") return { facts: { ...known, unreadable: whyNot(header) } };
  return type === "image/heic" ? lookAtHeic(known, bytes, heic) : lookAtOther(known, bytes);
}

async function lookAtOther(known: PhotoFacts, bytes: Uint8Array): Promise<Looked> {
  const pictures = await makePictures(open(bytes)).catch((thrown: Error) => thrown);
  return pictures instanceof Error ? { facts: { ...known, unreadable: whyNot(pictures) } } : { facts: shown(known, pictures), pictures };
}

async function lookAtHeic(known: PhotoFacts, bytes: Uint8Array, heic: HeicDecoder): Promise<Looked> {
  const answer = await heic.decode(bytes, MOST_PIXELS);
  if (!answer.ok) {
    const code = answer.why === "too-many-pixels" ? "photo-too-many-pixels" : "photo-unreadable";
    const size = answer.width && answer.height ? { width: answer.width, height: answer.height } : {};
    return {
      facts: {
        ...known,
        ...size,
        unreadable: unreadable(code, answer.says, code === "photo-too-many-pixels" ? { most: MOST_PIXELS } : {}),
      },
    };
  }
  const { width, height, pixels } = answer;
  const pictures = await makePictures(open(tiffOf(pixels, width, height, 4, heicProfile(bytes)))).catch((thrown: Error) => thrown);
  if (pictures instanceof Error) return { facts: { ...known, width, height, unreadable: whyNot(pictures) } };
  return { facts: { ...shown(known, pictures), width, height }, pictures };
}

const shown = (known: PhotoFacts, { renditions, measures }: Pictures): PhotoFacts => ({
  ...known,
  sharpness: measures.sharpness,
  exposure: measures.exposure,
  renditions: renditions.map((picture) => picture.facts),
});

function whyNot(error: Error): Unreadable {
  // The library has no codes: its words for the pixel limit, fixed by a test.
  if (/exceeds pixel limit/i.test(error.message)) return unreadable("photo-too-many-pixels", error.message, { most: MOST_PIXELS });
  return unreadable("photo-unreadable", error.message);
}

const unreadable = (code: RefusalCode, says: string, figures: Unreadable["figures"] = {}): Unreadable => ({
  code,
  figures,
  says: says.replace(/\s+/g, " ").trim().slice(0, 200),
});

const nothing: Metadata = { taken: null, satelliteTime: null, position: null, orientation: 1, notes: [] };

const blank = (sha: string, bytes: number): PhotoFacts => ({
  ...nothing,
  sha,
  bytes,
  type: null as PhotoType | null,
  width: null,
  height: null,
  sharpness: null,
  exposure: null,
  renditions: [],
});
