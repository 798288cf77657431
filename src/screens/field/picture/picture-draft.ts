import { useEffect, useState } from "preact/hooks";
import { useKeep } from "../keep/index.ts";
import type { Chosen, Pictured } from "./what.ts";

/** What survives the camera, a restart and the way to 'who enters today'. `before`: what was chosen first and taken again. */
export interface PictureDraft {
  readonly chosen?: Chosen;
  readonly before: readonly Chosen[];
  readonly caption: string;
}

export const emptyDraft: PictureDraft = { before: [], caption: "" };

/** What is in hand for one thing and not kept yet, and the way to change it. */
export function usePictureDraft(job: string, { item, tag }: Pictured): readonly [PictureDraft, (next: PictureDraft) => Promise<void>] {
  const { keep } = useKeep();
  const [draft, setDraft] = useState(emptyDraft);
  const place = `picture ${job} ${item} ${tag ?? ""}`;
  useEffect(() => {
    void keep.draft<PictureDraft>(place).then((before) => {
      // put to another picture meanwhile, it waits here no more
      const loose = keep.state.photos.some(({ sha256, loose }) => loose === true && sha256 === before?.chosen?.photo.sha256);
      if (before !== undefined && loose) setDraft(before);
    });
  }, [keep, place]);
  const change = async (next: PictureDraft): Promise<void> => {
    setDraft(next);
    await keep.keepDraft(place, next === emptyDraft ? undefined : next);
  };
  return [draft, change];
}
