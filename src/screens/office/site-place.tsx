import { useState } from "preact/hooks";
import { factsOf } from "../../job/index.ts";
import type { Refusal } from "../../outcome/index.ts";
import type { EntryMade, WireProblem } from "../../wire/index.ts";
import { tell } from "../parts/edge.ts";
import { JobPage, type JobTold } from "../parts/job-page.tsx";
import { Link } from "../parts/link.tsx";
import { jobPath } from "../parts/place.ts";
import { refusalText, useSpeaking } from "../parts/speaking.ts";
import { type SiteField, siteFields, siteTyped } from "./site-typed.ts";

type State =
  | { readonly is: "ready" | "entering" | "away" }
  | { readonly is: "entered"; readonly number: number }
  | { readonly is: "mistyped"; readonly refusal: Refusal }
  | { readonly is: "refused"; readonly problem: WireProblem };

/** Where the site is, typed by the office: the places that came with pictures are held beside it. */
export const SitePlace = ({ job }: { readonly job: string }) => <JobPage job={job}>{(told) => <Placing job={job} told={told} />}</JobPage>;

function Placing({ job, told: { now, sayer } }: { readonly job: string; readonly told: JobTold }) {
  const { say, session } = useSpeaking();
  const [state, setState] = useState<State>({ is: "ready" });
  const unit = session.units === "inch" ? "ft" : "m";
  const wrong = state.is === "mistyped" ? state.refusal.place : undefined;
  const submit = (event: SubmitEvent): void => {
    event.preventDefault();
    if (state.is === "entering") return;
    const form = event.currentTarget as HTMLFormElement;
    const given = new FormData(form);
    const text = (name: string): string => String(given.get(name) ?? "");
    const typed = Object.fromEntries(siteFields.map((field) => [field, text(field)])) as Record<SiteField, string>;
    const site = siteTyped(typed, unit);
    if (!site.ok) {
      (form.elements.namedItem(site.refusal.place) as HTMLElement | null)?.focus();
      setState({ is: "mistyped", refusal: site.refusal });
      return;
    }
    setState({ is: "entering" });
    void tell<EntryMade>(`/api/jobs/${job}/site`, { ...site.value, how: text("how").trim() }).then((answer) => {
      setState(answer.is === "given" ? { is: "entered", number: answer.value.number } : answer);
      if (answer.is === "given") form.reset();
    });
  };
  return (
    <section class="site-place">
      <h2>{say("site-place-title")}</h2>
      <p>{say("site-place-why")}</p>
      <Known now={now} />
      <form class="issue" onSubmit={submit}>
        {siteFields.map((field) => (
          <label key={field} class="typed">
            {say(`site-place-${field}`, { unit })}
            <input
              type="text"
              name={field}
              inputMode={field === "latitude" || field === "longitude" ? "text" : "decimal"}
              autoComplete="off"
              required={field === "latitude" || field === "longitude"}
              aria-invalid={wrong === field}
              aria-describedby={wrong === field ? "site-place-answer" : undefined}
            />
          </label>
        ))}
        <label class="typed">
          {say("site-place-source")}
          <input type="text" name="how" required={true} maxLength={200} pattern=".*\S.*" autoComplete="off" />
        </label>
        <button type="submit" class="target main" aria-disabled={state.is === "entering"}>
          {say("site-place-enter")}
        </button>
        <div id="site-place-answer" role="status" class={["refused", "away", "mistyped"].includes(state.is) ? "answer refused" : "answer"}>
          {state.is === "entering" && <p>{say("site-place-entering")}</p>}
          {state.is === "entered" && <p>{say("site-place-done", { number: state.number })}</p>}
          {state.is === "away" && <p>{say("site-place-away")}</p>}
          {state.is === "mistyped" && (
            <p>
              {say(`site-place-${state.refusal.place as SiteField}`, { unit })}: {sayer.refusal(state.refusal)}
            </p>
          )}
          {state.is === "refused" && (
            <p>
              {say("site-place-refused")} {refusalText(state.problem, session)}
            </p>
          )}
        </div>
      </form>
      <Link to={jobPath(job)}>{say("looking-to-job")}</Link>
    </section>
  );
}

/** The place as it was last entered; its degrees as they would be typed. */
function Known({ now }: Pick<JobTold, "now">) {
  const { say } = useSpeaking();
  const last = factsOf(now.state, "site-located").at(-1);
  const where = last?.entry.where as { readonly latitude?: unknown; readonly longitude?: unknown } | undefined;
  if (last === undefined || typeof where?.latitude !== "number" || typeof where.longitude !== "number")
    return <p>{say("site-place-none")}</p>;
  const [latitude, longitude] = [where.latitude, where.longitude].map((degrees) => (degrees / 1e7).toFixed(6));
  return <p>{say("site-place-now", { latitude: latitude ?? "", longitude: longitude ?? "", how: last.what.how })}</p>;
}
