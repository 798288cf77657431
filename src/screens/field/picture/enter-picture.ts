import { useCallback } from "preact/hooks";
import { type Entered, useKeep } from "../keep/index.ts";
import { useEnter } from "../use-enter.ts";
import { forgetSeen } from "./seen.tsx";
import { type Chosen, type Pictured, pictureWhat } from "./what.ts";

/** Enters a photo that this phone keeps as one picture. `lost`: its bytes cannot be read any more; undefined: who enters is asked first. */
export function useEnterPicture(
  job: string,
): (pictured: Pictured, chosen: Chosen, caption: string) => Promise<Entered | "lost" | undefined> {
  const { keep } = useKeep();
  const enter = useEnter(job);
  return useCallback(
    async (pictured, chosen, caption) => {
      const { sha256, type, taken } = chosen.photo;
      const bytes = await keep.bytesOf(sha256);
      const standing = keep.state.photos.find((one) => one.sha256 === sha256)?.standing;
      // the office has its bytes already, and this phone needs them no more
      if (bytes === undefined && standing !== "acknowledged") return "lost";
      const entered = await enter("picture-taken", {
        what: { ...pictureWhat(pictured, chosen, caption) },
        ...(chosen.where === undefined ? {} : { where: chosen.where }),
        photo: { sha256, type, taken, bytes: bytes ?? new ArrayBuffer(0) },
      });
      if (entered?.is === "kept") await forgetSeen(keep, sha256);
      return entered;
    },
    [keep, enter],
  );
}
