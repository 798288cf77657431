import type { Keep } from "../keep/index.ts";
import { type CardsSeen, findCards } from "./find.ts";

const seenPlace = (sha256: string): string => `cards ${sha256}`;
const saidPlace = (sha256: string): string => `cards-said ${sha256}`;

/** Photos that are being looked at: whoever asks meanwhile waits for the same look. */
const beingLookedAt = new Map<string, Promise<CardsSeen>>();

/**
 * What a person said of a photo, which a card does not change. `by hand`: it was taken on the page of one thing, and goes nowhere by
 * itself; `here`: it belongs where it is, whatever the card says.
 */
export type Said = "by hand" | "here";
export const saidOf = (keep: Keep, sha256: string): Promise<Said | undefined> => keep.draft<Said>(saidPlace(sha256));
export const keepSaid = (keep: Keep, sha256: string, said: Said | undefined): Promise<void> => keep.keepDraft(saidPlace(sha256), said);

/** What was found and said of cards in a photo stands on the phone until the photo is entered. */
export async function forgetCards(keep: Keep, sha256: string): Promise<void> {
  await keep.keepDraft(seenPlace(sha256), undefined);
  await keepSaid(keep, sha256, undefined);
}

interface ToLookAt {
  readonly sha256: string;
  readonly type: string;
}

async function look(keep: Keep, { sha256, type }: ToLookAt, file: Blob | undefined): Promise<CardsSeen> {
  const known = await keep.draft<CardsSeen>(seenPlace(sha256));
  if (known !== undefined) return known;
  const bytes = file === undefined ? await keep.bytesOf(sha256) : undefined;
  const photo = bytes === undefined ? file : new Blob([bytes], { type });
  if (photo === undefined) return { is: "not looked" };
  const seen = await findCards(photo);
  // it may have been entered or taken off meanwhile
  const waits = keep.state.photos.some((one) => one.sha256 === sha256 && one.loose === true);
  if (waits && seen.is === "looked") await keep.keepDraft(seenPlace(sha256), seen);
  return seen;
}

/**
 * The cards in a photo that this phone keeps: as found before, else looked for now. `file`: as it was chosen, whose bytes need not be
 * held while it waits for its turn. Never rejects.
 */
export function cardsIn(keep: Keep, photo: ToLookAt, file?: Blob): Promise<CardsSeen> {
  const { sha256 } = photo;
  const looking =
    beingLookedAt.get(sha256) ??
    look(keep, photo, file)
      .catch((): CardsSeen => ({ is: "not looked" }))
      .finally(() => beingLookedAt.delete(sha256));
  beingLookedAt.set(sha256, looking);
  return looking;
}
