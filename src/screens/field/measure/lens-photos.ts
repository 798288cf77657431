import { type CardPlane, cardPlane, type Lens, lensFrom, UNKNOWN_LENS } from "../../../geometry/index.ts";
import { cardCodeNames, cardLayout } from "../../../job/index.ts";
import { cardSigns } from "../../../photo/index.ts";
import type { CardsSeen } from "../cards/seen.ts";
import { edgesOf } from "./lens-kept.ts";

/** One photo that was chosen for the lens: what it is good for, and its plane where it is. */
export type LensPhoto = { readonly sha256: string } & (
  | { readonly is: "helps" | "helps-little"; readonly plane: CardPlane; readonly width: number; readonly height: number }
  | { readonly is: "no-card" | "several" | "not-flat" | "other-size" | "not-looked" | "twice" }
);

type Good = Extract<LensPhoto, { readonly plane: CardPlane }>;
export const isGood = (photo: LensPhoto): photo is Good => "plane" in photo;

/** Fewest photos by which a lens is told. */
export const LEAST_PHOTOS = 3;
/** Own: a photo that leaves of what was supposed more than this share of its doubt tells hardly anything. */
const HARDLY = 0.8;
/** Own: known within this, millionths, a lens adds little to what a length is doubtful by. */
export const WELL_KNOWN = 1000;

/** What one more photo is good for, beside those that were judged before. */
export function judgedForLens(sha256: string, seen: CardsSeen, before: readonly LensPhoto[]): LensPhoto {
  if (before.some((one) => one.sha256 === sha256 && one.is !== "twice")) return { sha256, is: "twice" };
  if (seen.is !== "looked") return { sha256, is: "not-looked" };
  const { width, height } = seen;
  const first = before.find(isGood);
  const [own, wanted] = [edgesOf(seen), edgesOf(first ?? seen)];
  if (own.long !== wanted.long || own.short !== wanted.short) return { sha256, is: "other-size" };
  const codes = seen.codes.flatMap(({ text, corners }) => {
    const signs = cardSigns(text);
    return typeof signs === "string" ? [] : [{ ...signs, corners }];
  });
  const [one] = codes;
  if (one === undefined) return { sha256, is: "no-card" };
  if (codes.some(({ paper }) => paper !== one.paper) || new Set(codes.map(({ place }) => place)).size < codes.length)
    return { sha256, is: "several" };
  const plane = cardPlane(cardLayout(one.paper).codes, {
    width,
    height,
    codes: codes.map(({ place, corners }) => ({ name: cardCodeNames[place], corners })),
  });
  if (!plane.ok) return { sha256, is: "no-card" };
  if (!plane.value.flat) return { sha256, is: "not-flat" };
  const supposed = UNKNOWN_LENS.within / Math.sqrt(3);
  return { sha256, is: plane.value.distortion.u > HARDLY * supposed ? "helps-little" : "helps", plane: plane.value, width, height };
}

/** The lens by all photos that are good for it; undefined while they are too few or tell nothing. */
export function lensBy(photos: readonly LensPhoto[]): Lens | undefined {
  const lens = lensFrom(photos.filter(isGood).map(({ plane }) => plane));
  return lens.ok ? lens.value : undefined;
}
