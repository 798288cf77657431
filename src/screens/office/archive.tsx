import { useState } from "preact/hooks";
import type { ArchiveRead, WireProblem } from "../../wire/index.ts";
import { sendFile } from "../parts/edge.ts";
import { Frame } from "../parts/frame.tsx";
import { Link } from "../parts/link.tsx";
import { jobPath } from "../parts/place.ts";
import { refusalText, useSpeaking } from "../parts/speaking.ts";

type State =
  | { readonly is: "ready" | "reading" | "away" }
  | { readonly is: "read"; readonly came: ArchiveRead }
  | { readonly is: "refused"; readonly problem: WireProblem };

/** Gigabytes of photos over a thin line. */
const PATIENCE_MS = 3_600_000;

/** Reads a job from an archive that another installation wrote: verified, all of it or nothing. */
export function ArchiveIn() {
  const { say, session } = useSpeaking();
  const [state, setState] = useState<State>({ is: "ready" });
  const submit = (event: SubmitEvent): void => {
    event.preventDefault();
    const file = new FormData(event.currentTarget as HTMLFormElement).get("archive");
    if (state.is === "reading" || !(file instanceof File)) return;
    setState({ is: "reading" });
    void sendFile<ArchiveRead>("POST", "/api/archives", file, PATIENCE_MS).then((answer) =>
      setState(answer.is === "given" ? { is: "read", came: answer.value } : answer),
    );
  };
  return (
    <Frame title={say("archive-in-title")} news={{ readAt: Date.now() }} inside={true}>
      <form class="issue opening" onSubmit={submit}>
        <p>{say("archive-in-how")}</p>
        <label class="typed">
          {say("archive-in-file")}
          <input class="target" type="file" name="archive" accept=".zip,application/zip" required={true} />
        </label>
        <button type="submit" class="target main" aria-disabled={state.is === "reading"}>
          {say("archive-in-read")}
        </button>
        <div role="status" class={state.is === "refused" || state.is === "away" ? "answer refused" : "answer"}>
          {state.is === "reading" && <p>{say("archive-in-reading")}</p>}
          {state.is === "away" && <p>{say("archive-in-away")}</p>}
          {state.is === "refused" && (
            <p>
              {say("archive-in-refused")} {refusalText(state.problem, session)}
            </p>
          )}
          {state.is === "read" && (
            <>
              <p>
                {state.came.outcome === "read"
                  ? say("archive-in-done", {
                      entries: state.came.entries,
                      photos: state.came.photos,
                      records: state.came.records,
                      without: state.came.without,
                    })
                  : say("archive-in-there")}
              </p>
              <Link to={jobPath(state.came.job)}>{say("archive-in-open")}</Link>
            </>
          )}
        </div>
      </form>
    </Frame>
  );
}
