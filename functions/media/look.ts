import { Buffer } from "node:buffer";
import type { CardCodeSeen, PhotoFacts, PhotoType } from "#core/photo/index.ts";
import { SNIFF_BYTES, sniff, whyNoPhoto } from "#functions/shared/index.ts";
import { type CardReader, cardsIn } from "./cards.ts";
import { type Header, MOST_PIXELS, open, readHeader, wideProfile } from "./decode.ts";
import type { HeicDecoder } from "./heic.ts";
import { heicProfile, isWideByNumbers } from "./heic-profile.ts";
import type { HeicAnswer } from "./heic-worker.ts";
import { type Metadata, readMetadata } from "./metadata.ts";
import { makePictures, type Pictures } from "./pictures.ts";
import { isHarmless, notWhole, unreadable, whyNot } from "./unreadable.ts";
import { ending } from "./whole.ts";

/** What works in threads of its own. */
export interface Threads {
  readonly heic: HeicDecoder;
  readonly cards: CardReader;
}

export interface Looked {
  readonly facts: PhotoFacts;
  readonly pictures?: Pictures;
}

/** Facts and renditions of a photo's bytes, whose hash is `sha`. Whatever the bytes are, this is an answer, never an error. */
export async function lookAt(sha: string, bytes: Uint8Array, threads: Threads): Promise<Looked> {
  const none = blank(sha, bytes.length);
  if (bytes.length === 0) return { facts: { ...none, unreadable: unreadable("photo-empty", "") } };
  const first = bytes.subarray(0, SNIFF_BYTES);
  const type = sniff(first);
  if (type === undefined) return { facts: { ...none, unreadable: unreadable(whyNoPhoto(first), "") } };
  return type === "image/heic" ? lookAtHeic(none, bytes, threads) : lookAtOther(none, bytes, type, threads.cards);
}

async function lookAtOther(none: PhotoFacts, bytes: Uint8Array, type: PhotoType, cards: CardReader): Promise<Looked> {
  const header = await readHeader(bytes).catch((thrown: Error) => thrown);
  const failed = header instanceof Error;
  const metadata = await readMetadata(bytes, type, failed ? undefined : header.metadataBlock);
  // An AVIF's own turn is followed by its decoder; the camera's tag repeats it and must not turn a second time.
  const orientation = type === "image/avif" ? 1 : metadata.orientation;
  const known: PhotoFacts = { ...none, ...metadata, orientation, type };
  if (failed) return { facts: { ...known, unreadable: await whyNot(header, bytes, type) } };
  const sized = { ...known, ...displayed(header, orientation) };
  const pictures = await decoded({ bytes, type, orientation }, cards).catch((thrown: Error) => thrown);
  if (pictures instanceof Error) return { facts: { ...sized, unreadable: await whyNot(pictures, bytes, type, header) } };
  const codes = await cardsIn(pictures.look, sized.width, orientation, () => open(bytes, "truncated"), cards);
  return { facts: shown(sized, pictures, codes), pictures };
}

const displayed = ({ width, height }: Header, orientation: number): { readonly width: number; readonly height: number } =>
  orientation >= 5 ? { width: height, height: width } : { width, height };

interface Decodable {
  readonly bytes: Uint8Array;
  readonly type: PhotoType;
  readonly orientation: number;
}

/**
 * The strictest decode first: it costs nothing where the file is good. What it complains of without a row being lost is
 * let pass in a second one; so is a JPEG that lacks nothing but the mark of its end.
 */
async function decoded({ bytes, type, orientation }: Decodable, cards: CardReader): Promise<Pictures> {
  try {
    return await makePictures(open(bytes, "warning"), orientation, cards);
  } catch (thrown) {
    if (isHarmless(thrown as Error)) return makePictures(open(bytes, "truncated"), orientation, cards);
    if (type !== "image/jpeg" || ending(bytes, type) !== "cut") throw thrown;
    const ended = Buffer.concat([bytes, Buffer.from([0xff, 0xd9])]);
    return makePictures(open(ended, "warning"), orientation, cards).catch(() => Promise.reject(thrown));
  }
}

/** Headers of some phones are refused by the image library, so it never sees them: sizes and pixels come from the HEIC decoder. */
async function lookAtHeic(none: PhotoFacts, bytes: Uint8Array, { heic, cards }: Threads): Promise<Looked> {
  // The container's own turn is followed by the decoder; the camera's tag repeats it.
  const known: PhotoFacts = { ...none, ...(await readMetadata(bytes, "image/heic", undefined)), orientation: 1, type: "image/heic" };
  const profile = heicProfile(bytes) ?? (isWideByNumbers(bytes) ? await wideProfile() : undefined);
  const answer = await heic.decode({ bytes, mostPixels: MOST_PIXELS, profile });
  if (!answer.ok) {
    const size = answer.width && answer.height ? { width: answer.width, height: answer.height } : {};
    const tooMany = answer.why === "too-many-pixels";
    const why = tooMany ? unreadable("photo-too-many-pixels", answer.says, { most: MOST_PIXELS }) : undefined;
    return { facts: { ...known, ...size, unreadable: why ?? whyNoHeic(bytes, answer) } };
  }
  const sized = { ...known, width: answer.width, height: answer.height };
  const pictures = await makePictures(open(answer.tiff, "truncated"), 1, cards).catch((thrown: Error) => thrown);
  if (pictures instanceof Error) return { facts: { ...sized, unreadable: unreadable("photo-unreadable", pictures.message) } };
  const codes = await cardsIn(pictures.look, sized.width, 1, () => open(answer.tiff, "truncated"), cards);
  return { facts: shown(sized, pictures, codes), pictures };
}

const whyNoHeic = (bytes: Uint8Array, { says, stored }: Extract<HeicAnswer, { readonly ok: false }>) =>
  ending(bytes, "image/heic") === "cut" ? notWhole(says, stored?.height, stored?.rows ?? 0) : unreadable("photo-unreadable", says);

const shown = (
  known: PhotoFacts,
  { renditions, measures, likeness, pixels }: Pictures,
  cards: readonly CardCodeSeen[] | undefined,
): PhotoFacts => ({
  ...known,
  ...measures,
  likeness,
  pixels,
  renditions: renditions.map((picture) => picture.facts),
  ...(cards === undefined ? {} : { cards }),
});

const nothing: Metadata = { taken: null, satelliteTime: null, position: null, orientation: 1, notes: [] };

/** The facts of a photo that nothing is known of but its bytes. */
export const blank = (sha: string, bytes: number): PhotoFacts => ({
  ...nothing,
  sha,
  bytes,
  type: null,
  width: null,
  height: null,
  sharpness: null,
  edges: null,
  exposure: null,
  likeness: null,
  pixels: null,
  renditions: [],
});
