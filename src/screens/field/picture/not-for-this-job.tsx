import { useState } from "preact/hooks";
import { useSpeaking } from "../../parts/speaking.ts";
import { type OwnPhoto, useKeep } from "../keep/index.ts";
import { forgetSeen } from "./seen.tsx";

/** A photo that was chosen by mistake: taken off this phone's store after a second word; the phone's own picture stays where it is. */
export function NotForThisJob({ photo }: { readonly photo: OwnPhoto }) {
  const { say } = useSpeaking();
  const { keep } = useKeep();
  const [asked, setAsked] = useState(false);
  const remove = async (): Promise<void> => {
    await keep.removeLoose(photo.sha256);
    await forgetSeen(keep, photo.sha256);
  };
  if (!asked)
    return (
      <button type="button" class="target" onClick={() => setAsked(true)}>
        {say("burst-not-here")}
      </button>
    );
  return (
    <section class="choices">
      <p>{say(photo.standing === "acknowledged" ? "burst-remove-gone" : "burst-remove-what")}</p>
      <button type="button" class="target" onClick={() => void remove()}>
        {say("burst-remove")}
      </button>
      <button type="button" class="target" onClick={() => setAsked(false)}>
        {say("burst-leave")}
      </button>
    </section>
  );
}
