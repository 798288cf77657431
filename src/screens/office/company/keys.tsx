import { useState } from "preact/hooks";
import type { KeyMade, KeySet, WireProblem } from "../../../wire/index.ts";
import { ask, tell } from "../../parts/edge.ts";
import { useNews } from "../../parts/news.ts";
import { momentHere, refusalText, useSpeaking } from "../../parts/speaking.ts";

type State =
  | { readonly is: "ready" | "asked" | "making" | "away" }
  | { readonly is: "made"; readonly key: string }
  | { readonly is: "refused"; readonly problem: WireProblem };

/** The keys of the company's seals, and a new one in the place of the one in use: asked once more before it is made. */
export function Keys() {
  const { say, session } = useSpeaking();
  const news = useNews("company keys", () => ask<KeySet>(`/api/companies/${session.company}/keys`));
  const [state, setState] = useState<State>({ is: "ready" });
  const keys = news.value?.keys ?? [];
  const moment = (at: number): string => momentHere(at, session.language);
  const make = async (): Promise<void> => {
    if (state.is === "making") return;
    setState({ is: "making" });
    const answer = await tell<KeyMade>("/api/company/keys");
    setState(answer.is === "given" ? { is: "made", key: answer.value.key } : answer);
    news.again();
  };
  return (
    <section class="issue company-keys">
      <h2>{say("company-keys")}</h2>
      <p>{say("company-keys-how")}</p>
      {news.value !== undefined && keys.length === 0 && <p>{say("company-keys-none")}</p>}
      <ul class="findings">
        {keys.map(({ kid, made, retired }) => (
          <li key={kid}>
            {retired === undefined
              ? say("company-key", { key: kid, made: moment(made) })
              : say("company-key-old", { key: kid, made: moment(made), retired: moment(retired) })}
          </li>
        ))}
      </ul>
      {session.role !== "company owner" && <p>{say("company-keys-owner")}</p>}
      {session.role === "company owner" && keys.length > 0 && (
        <>
          <p>{say("company-keys-why")}</p>
          {state.is === "asked" || state.is === "making" ? (
            <p class="looking-keys">
              <button type="button" class="target main" aria-disabled={state.is === "making"} onClick={() => void make()}>
                {say("company-keys-sure")}
              </button>
              <button type="button" class="target" onClick={() => setState({ is: "ready" })}>
                {say("company-keys-keep")}
              </button>
            </p>
          ) : (
            <button type="button" class="target" onClick={() => setState({ is: "asked" })}>
              {say("company-keys-new")}
            </button>
          )}
        </>
      )}
      <div role="status" class={state.is === "refused" || state.is === "away" ? "answer refused" : "answer"}>
        {state.is === "made" && <p>{say("company-keys-made", { key: state.key })}</p>}
        {state.is === "away" && <p>{say("after-away")}</p>}
        {state.is === "refused" && <p>{refusalText(state.problem, session)}</p>}
      </div>
    </section>
  );
}
