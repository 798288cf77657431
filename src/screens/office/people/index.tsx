import { useState } from "preact/hooks";
import type { JoinCodes, NewPerson, People, WireProblem } from "../../../wire/index.ts";
import { ask, tell } from "../../parts/edge.ts";
import { Frame } from "../../parts/frame.tsx";
import { useNews } from "../../parts/news.ts";
import { momentHere, refusalText, useSpeaking } from "../../parts/speaking.ts";
import { Field } from "../opening-parts.tsx";
import { GivenCodes } from "./codes.tsx";
import { PersonWays, roleWords } from "./person.tsx";

type State =
  | { readonly is: "ready" | "doing" | "away" }
  | { readonly is: "added"; readonly name: string }
  | { readonly is: "refused"; readonly problem: WireProblem };

const roles = ["crew", "office", "company owner"] as const;

/** Somebody new: the office adds crew, the company owner anybody. */
function AddPerson({ again }: { readonly again: () => void }) {
  const { say, session } = useSpeaking();
  const [state, setState] = useState<State>({ is: "ready" });
  const add = async (form: HTMLFormElement): Promise<void> => {
    const given = new FormData(form);
    const name = String(given.get("name")).trim();
    const role = session.role === "company owner" ? (String(given.get("role")) as NewPerson["role"]) : "crew";
    setState({ is: "doing" });
    const answer = await tell<{ person: string }>("/api/people", { name, role } satisfies NewPerson);
    setState(answer.is === "given" ? { is: "added", name } : answer);
    if (answer.is === "given") form.reset();
    again();
  };
  return (
    <details class="decision">
      <summary class="target">{say("people-add")}</summary>
      <form
        class="opening access-add"
        onSubmit={(event) => {
          event.preventDefault();
          if (state.is !== "doing") void add(event.currentTarget as HTMLFormElement);
        }}
      >
        <Field name="name" word="people-name" most={120} required={true} />
        {session.role === "company owner" && (
          <label class="typed">
            {say("people-role")}
            <select class="target" name="role">
              {roles.map((role) => (
                <option key={role} value={role}>
                  {say(roleWords[role])}
                </option>
              ))}
            </select>
          </label>
        )}
        <button type="submit" class="target main" aria-disabled={state.is === "doing"}>
          {say("people-add-now")}
        </button>
        <div role="status" class={state.is === "refused" || state.is === "away" ? "answer refused" : "answer"}>
          {state.is === "doing" && <p>{say("people-doing")}</p>}
          {state.is === "added" && <p>{say("people-added", { name: state.name })}</p>}
          {state.is === "away" && <p>{say("access-away")}</p>}
          {state.is === "refused" && <p>{refusalText(state.problem, session)}</p>}
        </div>
      </form>
    </details>
  );
}

/** The company's people, and how each of them comes in. */
export function PeoplePage() {
  const { say, session } = useSpeaking();
  const news = useNews("people", () => ask<People>("/api/people"));
  const codes = useNews("codes", () => ask<JoinCodes>("/api/codes"));
  const all = news.value?.people ?? [];
  const here = all.filter(({ left }) => left === undefined);
  return (
    <Frame title={say("people-title")} news={news} inside={true}>
      <p>{say("people-how")}</p>
      <AddPerson again={news.again} />
      {roles.map((role) => (
        <section key={role} class="access-part">
          <h2>{say(roleWords[role])}</h2>
          {here
            .filter((one) => one.role === role)
            .map((one) => (
              <PersonWays
                key={one.person}
                person={one}
                again={() => {
                  news.again();
                  codes.again();
                }}
              />
            ))}
        </section>
      ))}
      <GivenCodes codes={codes.value?.codes ?? []} people={all} again={codes.again} />
      <ul class="findings">
        {all.map(
          ({ person, name, left }) =>
            left !== undefined && (
              <li key={person}>
                {name}, {say("people-left", { time: momentHere(left, session.language) })}
              </li>
            ),
        )}
      </ul>
    </Frame>
  );
}
