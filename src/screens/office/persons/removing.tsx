import { useState } from "preact/hooks";
import type { PersonRequest } from "../../../wire/index.ts";
import { tell } from "../../parts/edge.ts";
import { dayInWords, useSpeaking } from "../../parts/speaking.ts";
import type { About } from "./everywhere.tsx";
import { type Doing, Told } from "./told.tsx";

interface Removing extends About {
  readonly whole: readonly string[];
  readonly choose: (whole: readonly string[]) => void;
}

/** What goes and what stays, asked once more before it is done. */
export function Removal({ found, again, whole, choose }: Removing) {
  const { say, session } = useSpeaking();
  const [isAsked, setAsked] = useState(false);
  const [state, setState] = useState<Doing>({ is: "ready" });
  const { request, jobs, goes, stays, backupsUntil } = found;
  const remove = async (): Promise<void> => {
    setState({ is: "doing" });
    const answer = await tell<PersonRequest>(`/api/persons/${request}/answer`, { whole });
    setState(answer.is === "given" ? { is: "done" } : answer);
    setAsked(false);
    again();
  };
  const theirs = jobs.filter(({ isTheirs }) => isTheirs);
  return (
    <section class="issue">
      <h2>{say("persons-removal")}</h2>
      {theirs.length > 0 && <p>{say("persons-whole-how")}</p>}
      {theirs.map(({ job, title }) => (
        <label key={job} class="target wide">
          <input
            type="checkbox"
            checked={whole.includes(job)}
            onChange={() => choose(whole.includes(job) ? whole.filter((one) => one !== job) : [...whole, job])}
          />
          <span>{say("persons-whole", { title: title === "" ? job : title })}</span>
        </label>
      ))}
      <p>{say("persons-goes", { bodies: goes.bodies, files: goes.files })}</p>
      <p>{say("persons-backups", { day: dayInWords(backupsUntil, session.language) })}</p>
      {stays.length > 0 && <p>{say("persons-stays")}</p>}
      <ul class="shown">
        {stays.map(({ job, title, number }) => (
          <li key={`${job} ${number}`}>{say("persons-stays-line", { title: title === "" ? job : title, number })}</li>
        ))}
      </ul>
      <p class="looking-keys">
        {isAsked ? (
          <>
            <button type="button" class="target main" aria-disabled={state.is === "doing"} onClick={() => void remove()}>
              {say("persons-remove-sure")}
            </button>
            <button type="button" class="target" onClick={() => setAsked(false)}>
              {say("persons-remove-keep")}
            </button>
          </>
        ) : (
          <button type="button" class="target" onClick={() => setAsked(true)}>
            {say("persons-remove-ask")}
          </button>
        )}
      </p>
      <Told state={state} done="persons-entered" />
    </section>
  );
}
