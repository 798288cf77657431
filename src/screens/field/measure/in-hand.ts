import { useEffect, useState } from "preact/hooks";
import { digest } from "../../parts/digest.ts";
import { findCards } from "../cards/find.ts";
import { cardsIn } from "../cards/of-photo.ts";
import type { CardsSeen } from "../cards/seen.ts";
import { type Keep, useKeep } from "../keep/index.ts";
import type { KeptPhoto } from "../picture/what.ts";
import { type CardInPhoto, type CardOfJob, cardInPhoto } from "./card-in-photo.ts";

/** The photo that was taken last: with signal its bytes leave the phone's store while somebody still measures in it. */
let last: { readonly sha256: string; readonly file: Blob } | undefined;
export const holdFile = (sha256: string, file: Blob): void => {
  last = { sha256, file };
};

export async function fileOf(keep: Keep, { sha256, type }: Pick<KeptPhoto, "sha256" | "type">): Promise<Blob | undefined> {
  if (last?.sha256 === sha256) return last.file;
  const bytes = await keep.bytesOf(sha256);
  return bytes && new Blob([bytes], { type });
}

/** A photo in hand: its pixels to draw from, and the card in it as soon as it was looked for. */
export type Opened =
  | { readonly is: "opening" | "lost" }
  | { readonly is: "open"; readonly picture: ImageBitmap; readonly card?: CardInPhoto };

async function cardsOf(keep: Keep, photo: KeptPhoto, file: Blob): Promise<CardsSeen> {
  const seen = await cardsIn(keep, photo);
  return seen.is === "looked" ? seen : findCards(file);
}

export function useOpened(photo: KeptPhoto, { company, job, steps }: CardOfJob): Opened {
  const { keep } = useKeep();
  const [opened, setOpened] = useState<Opened>({ is: "opening" });
  const known = steps.join(" ");
  useEffect(() => {
    let here = true;
    let picture: ImageBitmap | undefined;
    const open = async (): Promise<void> => {
      const file = await fileOf(keep, photo);
      picture = file && (await createImageBitmap(file).catch(() => undefined));
      if (!here) return picture?.close();
      if (file === undefined || picture === undefined) return setOpened({ is: "lost" });
      setOpened({ is: "open", picture });
      const card = await cardInPhoto(digest, await cardsOf(keep, photo, file), { company, job, steps: known.split(" ") });
      if (here) setOpened({ is: "open", picture, card });
    };
    setOpened({ is: "opening" });
    void open();
    return () => {
      here = false;
      picture?.close();
    };
  }, [keep, photo, company, job, known]);
  return opened;
}
