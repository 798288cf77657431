import { useState } from "preact/hooks";
import type { Joining, WireProblem } from "../../wire/index.ts";
import { tell } from "../parts/edge.ts";
import { refusalText, useSpeaking } from "../parts/speaking.ts";

type State = { readonly is: "ready" | "asking" | "away" } | { readonly is: "refused"; readonly problem: WireProblem };

/** The office's code: typed, or as the square picture brought it. */
export function Join({ token }: { readonly token?: string | undefined }) {
  const { say, session } = useSpeaking();
  const [state, setState] = useState<State>({ is: "ready" });
  const join = async (form: HTMLFormElement): Promise<void> => {
    const digits = String(new FormData(form).get("digits") ?? "");
    const given: Joining = token === undefined ? { digits } : { token };
    setState({ is: "asking" });
    const answer = await tell<undefined>("/api/join", given);
    if (answer.is !== "given") setState(answer);
    // from the beginning: whoever was signed in here before is no more
    else location.assign("/");
  };
  return (
    <form
      class="opening access-join"
      onSubmit={(event) => {
        event.preventDefault();
        if (state.is !== "asking") void join(event.currentTarget as HTMLFormElement);
      }}
    >
      <p>{say(token === undefined ? "join-how" : "join-picture-how")}</p>
      {session.name !== "" && <p class="stands-out">{say("join-signed-in", { name: session.name })}</p>}
      {token === undefined && (
        <label class="typed">
          {say("join-digits")}
          <input
            class="digits"
            name="digits"
            type="text"
            inputMode="numeric"
            autoComplete="one-time-code"
            placeholder="0000 0000 0000"
            pattern="(\s*[0-9][\s\-]*){12}"
            maxLength={40}
            required={true}
          />
        </label>
      )}
      <button type="submit" class="target main" aria-disabled={state.is === "asking"}>
        {say("join-now")}
      </button>
      <div role="status" class={state.is === "refused" || state.is === "away" ? "answer refused" : "answer"}>
        {state.is === "asking" && <p>{say("join-doing")}</p>}
        {state.is === "away" && <p>{say("access-away")}</p>}
        {state.is === "refused" && <p>{refusalText(state.problem, session)}</p>}
      </div>
    </form>
  );
}
