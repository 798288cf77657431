import { refusalText, useSpeaking } from "../parts/speaking.ts";
import type { Ceremony } from "./ceremony.ts";

export type CeremonyState = Ceremony | { readonly is: "ready" | "waiting" };

const words = {
  waiting: "sign-in-waiting",
  away: "access-away",
  stopped: "sign-in-stopped",
  there: "passkey-already",
  unable: "sign-in-not-able",
} as const;

/** What came of asking the device, and the way on. */
export function CeremonySays({ state }: { readonly state: CeremonyState }) {
  const { say, session } = useSpeaking();
  if (state.is === "ready" || state.is === "done") return <div role="status" class="answer" />;
  return (
    <div role="status" class={state.is === "waiting" ? "answer" : "answer refused"}>
      {state.is === "refused" && <p>{refusalText(state.problem, session)}</p>}
      {state.is === "elsewhere" && (
        <p>
          {say("sign-in-elsewhere")}{" "}
          <a class="target" href={new URL(location.pathname, state.origin).href}>
            {say("sign-in-go-there", { origin: state.origin })}
          </a>
        </p>
      )}
      {state.is !== "refused" && state.is !== "elsewhere" && <p>{say(words[state.is])}</p>}
    </div>
  );
}
