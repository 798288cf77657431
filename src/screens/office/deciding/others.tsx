import { useState } from "preact/hooks";
import { factsOf } from "../../../job/index.ts";
import type { OthersLinks as Links, OthersLinkMade, WireProblem } from "../../../wire/index.ts";
import { ask, tell } from "../../parts/edge.ts";
import { behindOf } from "../../parts/job-now.ts";
import type { JobTold } from "../../parts/job-page.tsx";
import { useNews } from "../../parts/news.ts";
import { momentHere, refusalText, useSpeaking } from "../../parts/speaking.ts";
import { MakeMessage } from "../message/index.tsx";
import { Typed } from "./decision-form.tsx";

type State =
  | { readonly is: "ready" | "making" | "away" }
  | { readonly is: "made"; readonly made: OthersLinkMade; readonly what: string }
  | { readonly is: "refused"; readonly problem: WireProblem };

/** What others did on the job, and the links by which they say so themselves. */
export function OthersLinks({ job, told: { now, sayer } }: { readonly job: string; readonly told: JobTold }) {
  const { say, session } = useSpeaking();
  const news = useNews(`others ${job}`, () => ask<Links>(`/api/jobs/${job}/others-links`));
  const [state, setState] = useState<State>({ is: "ready" });
  const behind = behindOf(now, say("someone"));
  const steps = now.state.sheet?.steps ?? [];
  const stepTitle = (step: string): string => sayer.words(steps.find(({ id }) => id === step)?.title);
  const make = async (form: HTMLFormElement): Promise<void> => {
    const given = new FormData(form);
    setState({ is: "making" });
    const what = String(given.get("what")).trim();
    const answer = await tell<OthersLinkMade>(`/api/jobs/${job}/others-links`, { step: String(given.get("step")), what });
    setState(answer.is === "given" ? { is: "made", made: answer.value, what } : answer);
    if (answer.is === "given") form.reset();
    news.again();
  };
  const withdraw = async (link: string): Promise<void> => {
    const answer = await tell<undefined>(`/api/jobs/${job}/others-links/${link}/withdraw`);
    if (answer.is !== "given") setState(answer);
    news.again();
  };
  return (
    <section class="others">
      <h3>{say("others-heading")}</h3>
      <ul class="findings">
        {factsOf(now.state, "done-by-others").map(({ id, at, what: { what, step, photo, paper } }) => (
          <li key={id}>
            <span>
              {step !== undefined && `${stepTitle(step)}: `}
              <b>{what}</b>. {behind(id).name}, {sayer.moment(at)}{" "}
              {photo !== undefined && (
                <a class="target" href={`/api/photos/${photo}/original`} target="_blank" rel="noreferrer">
                  {say("others-open-picture")}
                </a>
              )}
              {paper !== undefined && (
                <a class="target" href={`/api/papers/${paper}`} download={true}>
                  {say("others-save-paper")}
                </a>
              )}
            </span>
          </li>
        ))}
      </ul>
      <details class="decision">
        <summary class="target">{say("others-make-title")}</summary>
        <form
          class="issue"
          onSubmit={(event) => {
            event.preventDefault();
            if (state.is !== "making") void make(event.currentTarget as HTMLFormElement);
          }}
        >
          <p>{say("others-make-how")}</p>
          <label class="typed">
            {say("others-step")}
            <select class="target" name="step" required={true}>
              {steps.map(({ id }) => (
                <option key={id} value={id}>
                  {stepTitle(id)}
                </option>
              ))}
            </select>
          </label>
          <Typed name="what" word="others-what" />
          <button type="submit" class="target main" aria-disabled={state.is === "making"}>
            {say("others-make")}
          </button>
        </form>
      </details>
      <div role="status" class={state.is === "refused" || state.is === "away" ? "answer refused" : "answer"}>
        {state.is === "made" && (
          <>
            <p>{say("others-made", { time: momentHere(state.made.ends, session.language) })}</p>
            <p>
              <output class="others-link">{new URL(state.made.link, location.href).href}</output>
            </p>
            <MakeMessage
              key={state.made.link}
              job={job}
              kind="others"
              link={state.made.link}
              what={state.what}
              language={now.state.opened?.language ?? session.language}
            />
          </>
        )}
        {state.is === "away" && <p>{say("after-away")}</p>}
        {state.is === "refused" && <p>{refusalText(state.problem, session)}</p>}
      </div>
      <ul class="findings">
        {(news.value?.links ?? []).map(({ link, step, what, ends, is, used }) => (
          <li key={link}>
            <span>
              {stepTitle(step)}: {what}. {say(`others-is-${is}`, { time: momentHere(used ?? ends, session.language) })}{" "}
              {is === "open" && (
                <button type="button" class="target" onClick={() => void withdraw(link)}>
                  {say("others-withdraw")}
                </button>
              )}
            </span>
          </li>
        ))}
      </ul>
    </section>
  );
}
