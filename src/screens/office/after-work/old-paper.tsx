import { useState } from "preact/hooks";
import type { OldWarranty, WireProblem } from "../../../wire/index.ts";
import { digest } from "../../parts/digest.ts";
import { tell } from "../../parts/edge.ts";
import { refusalText, useSpeaking } from "../../parts/speaking.ts";
import { storePhoto } from "../store-photo.ts";

type Told = { readonly is: "ready" | "sending" | "away" } | { readonly is: "refused"; readonly problem: WireProblem };

/** The scanned paper of an old warranty: shown, or filed. */
export function OldPaper({ old, again }: { readonly old: OldWarranty; readonly again: () => void }) {
  const { say, session } = useSpeaking();
  const [state, setState] = useState<Told>({ is: "ready" });
  const file = async (scan: File): Promise<void> => {
    setState({ is: "sending" });
    const paper = await digest(new Uint8Array(await scan.arrayBuffer()));
    const troubled = await storePhoto(scan, paper);
    const answer = troubled ?? (await tell("/api/warranties/old", { ...old, paper }, "PUT"));
    setState(answer.is === "given" ? { is: "ready" } : answer);
    if (answer.is === "given") again();
  };
  return (
    <>
      {old.paper !== undefined && (
        <a class="target" href={`/api/photos/${old.paper}/original`} target="_blank" rel="noreferrer">
          {say("register-paper")}
        </a>
      )}
      <label class="typed">
        {say("register-paper-file", { part: old.part, number: old.number })}
        <input
          type="file"
          accept="image/*"
          onChange={(event) => {
            const scan = event.currentTarget.files?.[0];
            if (scan !== undefined) void file(scan);
          }}
        />
      </label>
      <div role="status">
        {state.is === "sending" && <p>{say("after-entering")}</p>}
        {state.is === "away" && <p>{say("after-away")}</p>}
        {state.is === "refused" && <p>{refusalText(state.problem, session)}</p>}
      </div>
    </>
  );
}
