import { useState } from "preact/hooks";
import type { CompanyView, KeepingView, Settings, SettingsSet } from "../../../wire/index.ts";
import { ask, tell } from "../../parts/edge.ts";
import { Frame } from "../../parts/frame.tsx";
import { Link } from "../../parts/link.tsx";
import { useNews } from "../../parts/news.ts";
import { jobPath } from "../../parts/place.ts";
import { dayInWords, useSpeaking } from "../../parts/speaking.ts";
import { type Doing, Told } from "./told.tsx";

const kinds = ["names", "places", "pictures", "records", "entries"] as const;

/** How long each kind of thing is kept, and what of which site ends next, before it goes. */
export function KeepingPage() {
  const { say, session } = useSpeaking();
  const news = useNews("keeping", () => ask<KeepingView>("/api/keeping"));
  const company = useNews("company", () => ask<CompanyView>("/api/company"));
  const view = news.value;
  return (
    <Frame title={say("keeping-title")} news={news} inside={true}>
      <p>{say("keeping-how")}</p>
      {view !== undefined && (
        <>
          {!view.isOwn && <p>{say("keeping-usual")}</p>}
          {view.notice !== undefined && <p>{say("keeping-notice", { day: dayInWords(view.notice, session.language) })}</p>}
          {company.value !== undefined && (
            <PeriodsForm
              periods={view.periods}
              settings={company.value.settings.content}
              again={() => {
                company.again();
                news.again();
              }}
            />
          )}
          <h2>{say("keeping-sites")}</h2>
          {view.sites.length === 0 && <p>{say("keeping-none")}</p>}
          <ul class="shown">
            {view.sites.map((site) => (
              <SiteLine key={site.site ?? site.jobs[0]?.job} site={site} />
            ))}
          </ul>
        </>
      )}
    </Frame>
  );
}

interface FormProps {
  readonly periods: KeepingView["periods"];
  readonly settings: Settings;
  readonly again: () => void;
}

const MONTHS = 12;

function periodsTyped(form: FormData): KeepingView["periods"] {
  const typed = kinds.flatMap((kind): readonly [string, number][] => {
    const years = Number(form.get(kind));
    return years > 0 ? [[kind, Math.round(years * MONTHS)]] : [];
  });
  return Object.fromEntries(typed);
}

function PeriodsForm({ periods, settings, again }: FormProps) {
  const { say } = useSpeaking();
  // what was read when the page was opened stays under the hand: a later reading changes no field
  const [first] = useState(periods);
  const [state, setState] = useState<Doing>({ is: "ready" });
  const save = async (form: FormData): Promise<void> => {
    setState({ is: "doing" });
    const answer = await tell<SettingsSet>("/api/company/settings", { ...settings, periods: periodsTyped(form) }, "PUT");
    setState(answer.is === "given" ? { is: "done" } : answer);
    again();
  };
  return (
    <form
      class="issue opening"
      onSubmit={(event) => {
        event.preventDefault();
        if (state.is !== "doing") void save(new FormData(event.currentTarget as HTMLFormElement));
      }}
    >
      <fieldset>
        {kinds.map((kind) => (
          <label key={kind} class="typed">
            {say("keeping-years", { kind: say(`keeping-${kind}`) })}
            <input
              type="number"
              name={kind}
              min={0.5}
              max={100}
              step={0.5}
              inputMode="decimal"
              defaultValue={first[kind] === undefined ? "" : String(first[kind] / MONTHS)}
            />
          </label>
        ))}
      </fieldset>
      <button type="submit" class="target main" aria-disabled={state.is === "doing"}>
        {say("keeping-save")}
      </button>
      <Told state={state} done="keeping-saved" />
    </form>
  );
}

function SiteLine({ site: { address, jobs, from, waits, endings, goes } }: { readonly site: KeepingView["sites"][number] }) {
  const { say, session } = useSpeaking();
  const dayOf = (day: string): string => dayInWords(day, session.language);
  return (
    <li>
      {address !== undefined && <p>{address}</p>}
      {jobs.map(({ job, title }) => (
        <p key={job}>
          <Link to={jobPath(job)}>{title === "" ? job : title}</Link>
        </p>
      ))}
      <p>{endings.length === 0 ? say("keeping-for-good") : say("keeping-from", { day: dayOf(from) })}</p>
      {endings.map(({ kind, until }) => (
        <p key={kind}>{say("keeping-ending", { kind: say(`keeping-${kind}`), day: dayOf(until) })}</p>
      ))}
      {waits && <p>{say("keeping-waits")}</p>}
      {goes !== undefined && <p>{say("keeping-goes", { bodies: goes.bodies, files: goes.files })}</p>}
    </li>
  );
}
