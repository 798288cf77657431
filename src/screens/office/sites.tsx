import { useState } from "preact/hooks";
import type { Refusal } from "../../outcome/index.ts";
import { makeSayer } from "../../record/index.ts";
import type { NewSite, SiteList, SiteSet, SiteView, WireProblem } from "../../wire/index.ts";
import { ask, tell } from "../parts/edge.ts";
import { Frame } from "../parts/frame.tsx";
import { useJobs } from "../parts/job-list.tsx";
import { Link } from "../parts/link.tsx";
import { useNews } from "../parts/news.ts";
import type { ListedJob } from "../parts/order.ts";
import { jobPath } from "../parts/place.ts";
import { refusalText, useSpeaking } from "../parts/speaking.ts";
import { Field } from "./opening-parts.tsx";
import { placeShown, type SiteField, siteChanged, siteFields } from "./site-typed.ts";

type State =
  | { readonly is: "ready" | "saving" | "away" }
  | { readonly is: "saved"; readonly jobs: number }
  | { readonly is: "mistyped"; readonly refusal: Refusal }
  | { readonly is: "refused"; readonly problem: WireProblem };

/** The company's sites: address, position and marks of each, shared by its jobs. */
export function SitesPage() {
  const { say } = useSpeaking();
  const news = useNews("sites", () => ask<SiteList>("/api/sites"));
  const jobs = useJobs().value ?? [];
  const sites = news.value?.sites ?? [];
  return (
    <Frame title={say("sites-title")} news={news} inside={true}>
      <p>{say("sites-how")}</p>
      {news.value !== undefined && sites.length === 0 && <p>{say("sites-none")}</p>}
      {sites.map((site) => (
        <SiteChange key={site.id} site={site} jobs={jobs} again={news.again} />
      ))}
    </Frame>
  );
}

interface SiteProps {
  readonly site: SiteView;
  readonly jobs: readonly ListedJob[];
  readonly again: () => void;
}

function SiteChange({ site: read, jobs, again }: SiteProps) {
  const { say, session } = useSpeaking();
  // what was read when the page was opened stays under the hand: a later reading changes no field
  const [site, setSite] = useState(read);
  const [state, setState] = useState<State>({ is: "ready" });
  const unit = session.units === "inch" ? "ft" : "m";
  const wrong = state.is === "mistyped" ? state.refusal.place : undefined;
  const shown = placeShown(site.place, unit);
  const own = read.jobs.map((job) => ({ job, title: jobs.find((one) => one.job === job)?.title ?? job }));
  const submit = (event: SubmitEvent): void => {
    event.preventDefault();
    if (state.is === "saving") return;
    const form = new FormData(event.currentTarget as HTMLFormElement);
    const typed = siteChanged(site, (name) => String(form.get(name) ?? "").trim(), unit);
    if (!typed.ok) {
      setState({ is: "mistyped", refusal: typed.refusal });
      return;
    }
    setState({ is: "saving" });
    const sent: NewSite = typed.value;
    void tell<SiteSet>("/api/sites", sent).then((answer) => {
      setState(answer.is === "given" ? { is: "saved", jobs: answer.value.jobs.length } : answer);
      if (answer.is === "given") setSite({ ...sent, id: site.id, number: answer.value.number, jobs: site.jobs });
      again();
    });
  };
  return (
    <article class="site-change">
      <h2>{read.address}</h2>
      <p>{say(own.length === 0 ? "sites-no-jobs" : "sites-touches", { count: own.length })}</p>
      <ul class="findings">
        {own.map(({ job, title }) => (
          <li key={job}>
            <Link to={jobPath(job)}>{title}</Link>
          </li>
        ))}
      </ul>
      <details class="decision">
        <summary class="target">{say("sites-change")}</summary>
        <form class="issue opening" onSubmit={submit}>
          <fieldset>
            <legend>{say("opening-site")}</legend>
            <Field name="address" word="opening-address" most={300} required={true} value={site.address} />
            <Field name="heightMark" word="opening-height-mark" most={200} value={site.heightMark} />
            <label class="typed">
              {say("opening-tie-marks")}
              <textarea name="tieMarks" rows={4} maxLength={3000} defaultValue={(site.tieMarks ?? []).join("\n")} />
            </label>
            {siteFields.map((field) => (
              <Field
                key={field}
                name={field}
                word={`site-place-${field}`}
                most={40}
                figures={{ unit }}
                wrong={wrong === field}
                value={shown[field]}
              />
            ))}
            <Field name="how" word="site-place-source" most={200} value={site.place?.how} />
          </fieldset>
          {own.length > 0 && <p>{say("sites-each")}</p>}
          <button type="submit" class="target main" aria-disabled={state.is === "saving"}>
            {say("sites-save")}
          </button>
        </form>
      </details>
      <div role="status" class={["refused", "away", "mistyped"].includes(state.is) ? "answer refused" : "answer"}>
        {state.is === "saving" && <p>{say("after-entering")}</p>}
        {state.is === "saved" && <p>{say("sites-saved", { count: state.jobs })}</p>}
        {state.is === "away" && <p>{say("after-away")}</p>}
        {state.is === "mistyped" && (
          <p>
            {siteFields.includes(state.refusal.place as SiteField) &&
              `${say(`site-place-${state.refusal.place as SiteField}`, { unit })}: `}
            {makeSayer({ language: session.language, units: session.units, zone: "UTC" }).refusal(state.refusal)}
          </p>
        )}
        {state.is === "refused" && <p>{refusalText(state.problem, session)}</p>}
      </div>
    </article>
  );
}
