import { prepareZXingModule, readBarcodes } from "zxing-wasm/reader";
import wasm from "zxing-wasm/reader/zxing_reader.wasm?url";
import {
  CARD_MODULES,
  cardDecoding,
  cardSigns,
  codeCorners,
  type FourCorners,
  type Grey,
  greyFile,
  greyFromRgba,
  WHOLE_CARD,
} from "../../../photo/index.ts";
import type { PhotoAsked } from "../beside.ts";
import { type Crop, cropAbout, fromCrop, roughIn, toCrop, wholeSize } from "./crops.ts";
import type { CardsLooked, CardsSeen, CodeSeen } from "./seen.ts";

declare const self: { onmessage: (event: { readonly data: PhotoAsked }) => void; postMessage(looked: CardsLooked): void };

/** Long edges of the looks: the second only where the first has not read a whole card. */
const LOOKS = [1600, 3200] as const;

let ready: Promise<unknown> | undefined;

/** The decoder lies on this phone with the app; it comes when there is a photo. */
function decoder(): Promise<unknown> {
  ready ??= fetch(wasm)
    .then((response) => (response.ok ? response.arrayBuffer() : Promise.reject(new Error("no decoder here"))))
    .then((wasmBinary) => prepareZXingModule({ overrides: { wasmBinary }, fireImmediately: true }))
    .catch((error: unknown) => {
      ready = undefined;
      throw error;
    });
  return ready;
}

/** A part of the picture, drawn smaller where `to` is: a canvas of the whole picture comes out blank on some phones. */
function greyOf(picture: ImageBitmap, from: Crop, to: { readonly width: number; readonly height: number }): Grey {
  const context = new OffscreenCanvas(to.width, to.height).getContext("2d", { willReadFrequently: true });
  if (context === null) throw new Error("no canvas here");
  // at its own size every pixel stays what it is
  context.imageSmoothingEnabled = to.width !== from.width;
  context.imageSmoothingQuality = "high";
  context.drawImage(picture, from.left, from.top, from.width, from.height, 0, 0, to.width, to.height);
  return greyFromRgba(context.getImageData(0, 0, to.width, to.height).data, to.width, to.height);
}

interface Rough {
  readonly text: string;
  /** In the picture's own pixels. */
  readonly corners: FourCorners;
  /** One pixel of what was looked at, in the picture's own. */
  readonly u: number;
}

/** Codes of cards in the picture drawn at most so large, as the decoder gives them. */
async function look(picture: ImageBitmap, longEdge: number): Promise<readonly Rough[]> {
  const whole: Crop = { left: 0, top: 0, width: picture.width, height: picture.height };
  const looked = wholeSize(whole, longEdge);
  const results = await readBarcodes(greyFile(greyOf(picture, whole, looked)), { ...cardDecoding });
  return results
    .filter(({ text }) => cardSigns(text) !== "not a card")
    .map(({ text, position }) => ({ text, corners: roughIn(position, whole, looked), u: picture.width / looked.width }));
}

/** The corners by the picture's own pixels; where they cannot be told, the decoder's with the doubt of its whole pixels. */
function finely(picture: ImageBitmap, { text, corners, u }: Rough): CodeSeen {
  const crop = cropAbout(corners, picture);
  const size = wholeSize(crop);
  const fine = codeCorners(greyOf(picture, crop, size), toCrop(corners, crop, size), CARD_MODULES);
  const [a, b, c, d] = corners;
  const rough = [
    { ...a, u },
    { ...b, u },
    { ...c, u },
    { ...d, u },
  ] as const;
  return { text, corners: fine === undefined ? rough : fromCrop(fine, crop, size) };
}

async function find(photo: Blob): Promise<CardsSeen> {
  await decoder();
  const picture = await createImageBitmap(photo);
  try {
    const { width, height } = picture;
    let found: readonly Rough[] = [];
    for (const longEdge of LOOKS) {
      if (found.length >= WHOLE_CARD || (longEdge !== LOOKS[0] && Math.max(width, height) <= LOOKS[0])) break;
      const again = await look(picture, longEdge);
      if (again.length >= found.length) found = again;
    }
    return { is: "looked", width, height, codes: found.map((code) => finely(picture, code)) };
  } finally {
    picture.close();
  }
}

self.onmessage = ({ data: { number, photo } }) => {
  void find(photo)
    .catch((): CardsSeen => ({ is: "not looked" }))
    .then((cards) => self.postMessage({ number, cards }));
};
