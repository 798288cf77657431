import { useState } from "preact/hooks";
import type { Access, WireProblem } from "../../wire/index.ts";
import { tell } from "../parts/edge.ts";
import { momentHere, refusalText, useSpeaking } from "../parts/speaking.ts";

type State =
  | { readonly is: "ready" | "doing" | "away" | "removed" | "ended" }
  | { readonly is: "asked"; readonly passkey: string }
  | { readonly is: "refused"; readonly problem: WireProblem };

interface WaysInProps {
  readonly access: Access;
  /** Of the page that it stands on. */
  readonly heading: "h2" | "h4";
  readonly again: () => void;
}

/** The passkeys of one person and the devices that are signed in, each with its end. */
export function WaysIn({ access: { role, passkeys, sessions }, heading: Heading, again }: WaysInProps) {
  const { say, session } = useSpeaking();
  const [state, setState] = useState<State>({ is: "ready" });
  const moment = (at: number): string => momentHere(at, session.language);
  const end = async (path: string, is: "removed" | "ended"): Promise<void> => {
    setState({ is: "doing" });
    const answer = await tell<undefined>(path);
    setState(answer.is === "given" ? { is } : answer);
    again();
  };
  return (
    <>
      {role !== "crew" && (
        <>
          <Heading>{say("access-passkeys")}</Heading>
          {passkeys.length === 0 && <p>{say("access-passkeys-none")}</p>}
          <ul class="findings access-list">
            {passkeys.map(({ passkey, name, made, last, synced }) => (
              <li key={passkey}>
                <span>
                  <b>{say("access-passkey-line", { name, made: moment(made) })}</b>;{" "}
                  {last === undefined ? say("access-passkey-unused") : say("access-passkey-last", { time: moment(last) })}
                  {synced && `; ${say("access-passkey-synced")}`}
                </span>
                {state.is === "asked" && state.passkey === passkey ? (
                  <>
                    <button type="button" class="target main" onClick={() => void end(`/api/passkeys/${passkey}/withdraw`, "removed")}>
                      {say("access-remove-sure")}
                    </button>
                    <button type="button" class="target" onClick={() => setState({ is: "ready" })}>
                      {say("access-keep")}
                    </button>
                  </>
                ) : (
                  <button type="button" class="target" onClick={() => setState({ is: "asked", passkey })}>
                    {say("access-remove")}
                  </button>
                )}
              </li>
            ))}
          </ul>
        </>
      )}
      <Heading>{say("access-devices")}</Heading>
      <ul class="findings access-list">
        {sessions.map(({ session: id, device, way, began, last, ends, here }) => (
          <li key={id}>
            <span>
              {here && <b>{say("access-here")}: </b>}
              {say("access-session-line", {
                device: say(`access-device-${device}`),
                way: say(`access-way-${way}`),
                began: moment(began),
                last: moment(last),
                ends: moment(ends),
              })}
            </span>
            {!here && (
              <button type="button" class="target" onClick={() => void end(`/api/sessions/${id}/end`, "ended")}>
                {say("access-end")}
              </button>
            )}
          </li>
        ))}
      </ul>
      <div role="status" class={state.is === "refused" || state.is === "away" ? "answer refused" : "answer"}>
        {state.is === "doing" && <p>{say("people-doing")}</p>}
        {state.is === "removed" && <p>{say("access-removed")}</p>}
        {state.is === "ended" && <p>{say("access-ended")}</p>}
        {state.is === "away" && <p>{say("access-away")}</p>}
        {state.is === "refused" && <p>{refusalText(state.problem, session)}</p>}
      </div>
    </>
  );
}
