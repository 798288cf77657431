import type { WireProblem } from "../../../wire/index.ts";
import { refusalText, useSpeaking } from "../../parts/speaking.ts";

/** How something that was asked of the edge goes. */
export type Doing = { readonly is: "ready" | "doing" | "done" | "away" } | { readonly is: "refused"; readonly problem: WireProblem };

/** How what was asked of the edge went, told to who listens too. */
export function Told({ state, done }: { readonly state: Doing; readonly done: "persons-entered" | "keeping-saved" }) {
  const { say, session } = useSpeaking();
  return (
    <div role="status" class={state.is === "refused" || state.is === "away" ? "answer refused" : "answer"}>
      {state.is === "doing" && <p>{say("persons-doing")}</p>}
      {state.is === "done" && <p>{say(done)}</p>}
      {state.is === "away" && <p>{say("after-away")}</p>}
      {state.is === "refused" && <p>{refusalText(state.problem, session)}</p>}
    </div>
  );
}
