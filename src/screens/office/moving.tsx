import { useRef, useState } from "preact/hooks";
import { type PhoneVisit, phoneVisits } from "../../job/index.ts";
import type { MovedToJob, WireProblem } from "../../wire/index.ts";
import { tell } from "../parts/edge.ts";
import { useJobs } from "../parts/job-list.tsx";
import { JobPage, type JobTold } from "../parts/job-page.tsx";
import { Link } from "../parts/link.tsx";
import { jobPath } from "../parts/place.ts";
import { refusalText, useSpeaking } from "../parts/speaking.ts";

type State =
  | { readonly is: "ready" | "moving" | "away" }
  | { readonly is: "moved"; readonly moved: MovedToJob }
  | { readonly is: "refused"; readonly problem: WireProblem };

/** Moves pictures, or a whole visit at once, to the job that they belong to. */
export const Moving = ({ job }: { readonly job: string }) => <JobPage job={job}>{(told) => <Choosing job={job} told={told} />}</JobPage>;

const newId = (): string => Array.from(crypto.getRandomValues(new Uint8Array(16)), (byte) => byte.toString(16).padStart(2, "0")).join("");

function Choosing({ job, told }: { readonly job: string; readonly told: JobTold }) {
  const { say, session } = useSpeaking();
  const jobs = (useJobs().value ?? []).filter((one) => one.job !== job);
  const [chosen, setChosen] = useState<ReadonlySet<string>>(new Set());
  const [state, setState] = useState<State>({ is: "ready" });
  const id = useRef(newId());
  const visits = phoneVisits(told.now.state);
  const turn = (ids: readonly string[], on: boolean): void => {
    const next = new Set(chosen);
    for (const one of ids) on ? next.add(one) : next.delete(one);
    setChosen(next);
  };
  const submit = (event: SubmitEvent): void => {
    event.preventDefault();
    if (state.is === "moving" || chosen.size === 0) return;
    const given = new FormData(event.currentTarget as HTMLFormElement);
    setState({ is: "moving" });
    const asked = { to: String(given.get("to")), reason: String(given.get("reason")).trim(), entries: [...chosen], id: id.current };
    void tell<MovedToJob>(`/api/jobs/${job}/moves`, asked).then((answer) => {
      setState(answer.is === "given" ? { is: "moved", moved: answer.value } : answer);
      if (answer.is !== "given") return;
      id.current = newId();
      setChosen(new Set());
      told.again();
    });
  };
  return (
    <section class="deciding">
      <h2>{say("moving-title")}</h2>
      <p>{say("moving-how")}</p>
      {visits.length === 0 && <p>{say("moving-none")}</p>}
      {visits.map((visit) => (
        <Visit key={`${visit.phone} ${visit.facts[0]?.id}`} visit={visit} told={told} chosen={chosen} turn={turn} />
      ))}
      <form class="issue" onSubmit={submit}>
        <p role="status">{say("moving-chosen", { count: chosen.size })}</p>
        <label class="typed">
          {say("moving-to")}
          <select class="target" name="to" required={true}>
            {jobs.map((one) => (
              <option key={one.job} value={one.job}>
                {one.ownNumber === undefined ? one.title : `${one.title}, ${one.ownNumber}`}
              </option>
            ))}
          </select>
        </label>
        <label class="typed">
          {say("moving-reason")}
          <input type="text" name="reason" required={true} maxLength={200} autoComplete="off" />
        </label>
        <button type="submit" class="target main" aria-disabled={state.is === "moving" || chosen.size === 0}>
          {say("moving-move")}
        </button>
        <div role="status" class={state.is === "refused" || state.is === "away" ? "answer refused" : "answer"}>
          {state.is === "moving" && <p>{say("after-entering")}</p>}
          {state.is === "away" && <p>{say("after-away")}</p>}
          {state.is === "moved" && (
            <>
              <p>{say("moving-done", { count: state.moved.entries })}</p>
              {state.moved.issueAgain.map(({ job: of, title, version }) => (
                <p key={of}>
                  <Link to={jobPath(of)}>{say("moving-issue-again", { title, version })}</Link>
                </p>
              ))}
            </>
          )}
          {state.is === "refused" && (
            <p>
              {say("after-refused")} {refusalText(state.problem, session)}
            </p>
          )}
        </div>
      </form>
      <Link to={jobPath(job)}>{say("looking-to-job")}</Link>
    </section>
  );
}

interface VisitProps {
  readonly visit: PhoneVisit;
  readonly told: JobTold;
  readonly chosen: ReadonlySet<string>;
  readonly turn: (ids: readonly string[], on: boolean) => void;
}

/** One visit: taken whole with one touch, or picture by picture. */
function Visit({ visit, told: { now, sayer, pictures }, chosen, turn }: VisitProps) {
  const { say } = useSpeaking();
  const all = visit.facts.map(({ id }) => id);
  const own = new Set(all);
  const seen = pictures.filter(({ entry }) => own.has(entry));
  const name = now.people.find(({ person }) => person === visit.person)?.name ?? say("someone");
  return (
    <article class="moving-visit">
      <label class="target whole-visit">
        <input type="checkbox" checked={all.every((one) => chosen.has(one))} onChange={(event) => turn(all, event.currentTarget.checked)} />{" "}
        <span>
          {say("moving-visit", {
            name,
            from: sayer.moment(visit.from),
            to: sayer.moment(visit.to),
            entries: all.length,
            pictures: seen.length,
          })}
        </span>
      </label>
      {seen.length > 0 && (
        <details>
          <summary class="target">{say("moving-single")}</summary>
          <div class="pictures">
            {seen.map(({ entry, address, unseen, title, at }) => (
              <label key={entry} class="target moving-picture">
                <input type="checkbox" checked={chosen.has(entry)} onChange={(event) => turn([entry], event.currentTarget.checked)} />
                {unseen === undefined ? <img class="mount" src={address} alt="" loading="lazy" /> : <span>{say(unseen)}</span>}
                <span>
                  {title}, {sayer.moment(at)}
                </span>
              </label>
            ))}
          </div>
        </details>
      )}
    </article>
  );
}

/** On the job's page: that the record that was issued does not know what was moved since. */
export function MovedSince({ version }: { readonly version: number | undefined }) {
  const { say } = useSpeaking();
  return version === undefined ? null : <p class="doubted">{say("moving-since", { version })}</p>;
}
