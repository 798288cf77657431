import { useRef, useState } from "preact/hooks";
import type { Refusal } from "../../outcome/index.ts";
import type { CompanyView, JobOpened, People, SiteList, WireProblem } from "../../wire/index.ts";
import { ask, tell } from "../parts/edge.ts";
import { Frame } from "../parts/frame.tsx";
import { useNews } from "../parts/news.ts";
import { jobPath } from "../parts/place.ts";
import { refusalText, useSpeaking } from "../parts/speaking.ts";
import { DesignTyping } from "./opening-design.tsx";
import { OpenedLate } from "./opening-late.tsx";
import { Contacts, CrewChoice, Field, SiteChoice } from "./opening-parts.tsx";
import { OfficeReadings } from "./opening-readings.tsx";
import { useSheet } from "./opening-sheet.ts";
import { filledIn, openingTyped } from "./opening-typed.ts";
import { wordsIn } from "./words-in.ts";

type State =
  | { readonly is: "ready" | "opening" | "away" }
  | { readonly is: "mistyped"; readonly refusal: Refusal }
  | { readonly is: "refused"; readonly problem: WireProblem };

interface Known {
  readonly company: CompanyView;
  readonly people: People["people"];
  readonly sites: SiteList["sites"];
}

async function readKnown() {
  const [company, people, sites] = await Promise.all([
    ask<CompanyView>("/api/company"),
    ask<People>("/api/people"),
    ask<SiteList>("/api/sites"),
  ]);
  if (company.is !== "given") return company;
  if (people.is !== "given") return people;
  if (sites.is !== "given") return sites;
  return { is: "given" as const, value: { company: company.value, people: people.value.people, sites: sites.value.sites } };
}

const newId = (): string => crypto.randomUUID().replaceAll("-", "");

/** The office opens a job: contacts, site, crew, tolerance sheet, kit cards and design with its check, locate ticket, opened late. */
export function Opening() {
  const { say } = useSpeaking();
  const news = useNews("opening", readKnown);
  return (
    <Frame title={say("opening-title")} news={news} inside={true}>
      {news.value && <OpeningFields known={news.value} />}
    </Frame>
  );
}

function OpeningFields({ known: { company, people, sites } }: { readonly known: Known }) {
  const { say, session, go } = useSpeaking();
  // sent again after a break it is the same job
  const [id, setId] = useState(newId);
  const [state, setState] = useState<State>({ is: "ready" });
  const [chosen, setChosen] = useState(company.sheets[0]?.digest ?? "");
  const sheet = useSheet(chosen);
  const form = useRef<HTMLFormElement>(null);
  const { zone } = company.settings.content;
  const wrong = state.is === "mistyped" ? state.refusal.place : state.is === "refused" ? state.problem.place : undefined;
  const submit = (event: SubmitEvent): void => {
    event.preventDefault();
    if (state.is === "opening" || form.current === null) return;
    const opening = openingTyped(filledIn(form.current), { id, sheet, units: session.units, zone });
    if (!opening.ok) {
      (form.current.elements.namedItem(opening.refusal.place) as HTMLElement | null)?.focus();
      setState({ is: "mistyped", refusal: opening.refusal });
      return;
    }
    setState({ is: "opening" });
    void tell<JobOpened>("/api/openings", opening.value).then((answer) => {
      if (answer.is === "given") {
        go(jobPath(answer.value.job));
        return;
      }
      // what was refused left nothing behind; another id, so that a corrected opening is not taken for the first
      if (answer.is === "refused") setId(newId());
      setState(answer);
    });
  };
  return (
    <form class="issue opening" ref={form} onSubmit={submit}>
      <fieldset>
        <legend>{say("opening-job")}</legend>
        <Field name="title" word="opening-name" required={true} most={200} />
        <Field name="ownNumber" word="opening-own-number" most={80} wrong={wrong === "ownNumber"} />
        <Field name="order" word="opening-order" most={80} />
        <Field name="invoice" word="opening-invoice" most={80} />
        <label class="typed">
          {say("opening-language")}
          <select class="target" name="language">
            <option value={session.language}>{say(session.language === "en" ? "opening-language-en" : "opening-language-es")}</option>
            <option value={session.language === "en" ? "es" : "en"}>
              {say(session.language === "en" ? "opening-language-es" : "opening-language-en")}
            </option>
          </select>
        </label>
      </fieldset>
      <Contacts />
      <SiteChoice sites={sites} wrong={wrong} />
      <CrewChoice people={people} />
      <fieldset>
        <legend>{say("tolerance-sheet")}</legend>
        <label class="typed">
          {say("opening-sheet")}
          <select class="target" name="sheet" value={chosen} onChange={(event) => setChosen(event.currentTarget.value)}>
            {company.sheets.map(({ digest, name, title, version }) => (
              <option key={digest} value={digest}>
                {wordsIn(title, session.language) || name}, {version}
              </option>
            ))}
            <option value="">{say("opening-sheet-none")}</option>
          </select>
        </label>
      </fieldset>
      <DesignTyping company={company} sheet={sheet?.content} form={form} />
      <OfficeReadings sheet={sheet} zone={zone} />
      <OpenedLate sheet={sheet?.content} />
      <button type="submit" class="target main" aria-disabled={state.is === "opening"}>
        {say("opening-open")}
      </button>
      <div id="opening-answer" role="status" class={["refused", "away", "mistyped"].includes(state.is) ? "answer refused" : "answer"}>
        {state.is === "opening" && <p>{say("opening-opening")}</p>}
        {state.is === "away" && <p>{say("opening-away")}</p>}
        {state.is === "mistyped" && <p>{refusalText({ ...noProblem, ...state.refusal }, session)}</p>}
        {state.is === "refused" && (
          <p>
            {say("opening-refused")} {refusalText(state.problem, session)}
          </p>
        )}
      </div>
    </form>
  );
}

const noProblem: WireProblem = { type: "", title: "", status: 422, detail: "", code: "", place: "", figures: {} };
