import { useEffect, useState } from "preact/hooks";
import { useSpeaking } from "../../parts/speaking.ts";
import { type Keep, useKeep } from "../keep/index.ts";
import { dayHere } from "../use-enter.ts";

/** Where the camera was opened; it stands as long as nothing has come back from it. */
interface CameraOpen {
  readonly path: string;
  readonly day: string;
}

const PLACE = "camera";

export const cameraOpens = (keep: Keep): Promise<void> =>
  keep.keepDraft(PLACE, { path: location.pathname, day: dayHere(Date.now()) } satisfies CameraOpen);
export const cameraClosed = (keep: Keep): Promise<void> => keep.keepDraft(PLACE, undefined);

/** Whether this page was left for the camera and died meanwhile, so that its photo never came. */
export function useNotReceived(): readonly [boolean, () => void] {
  const { keep } = useKeep();
  const [not, setNot] = useState(false);
  useEffect(() => {
    void keep.draft<CameraOpen>(PLACE).then(async (open) => {
      if (open?.path !== location.pathname) return;
      await cameraClosed(keep);
      setNot(true);
    });
    // whoever walks away from this page is not waiting for its camera
    return () => void cameraClosed(keep);
  }, [keep]);
  return [not, () => setNot(false)];
}

/** A phone that closed the app while its camera was open starts where the picture was to be taken. */
export function useBackToCamera(): void {
  const { go, moved } = useSpeaking();
  const { keep } = useKeep();
  useEffect(() => {
    if (moved) return;
    void keep.draft<CameraOpen>(PLACE).then((open) => {
      if (open === undefined) return;
      if (open.day === dayHere(Date.now())) go(open.path);
      else void cameraClosed(keep);
    });
  }, [keep, go, moved]);
}
