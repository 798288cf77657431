import { useState } from "preact/hooks";
import { handingOverText, makeWarrantySayer } from "../../../record/index.ts";
import type { CompanyView, Language } from "../../../wire/index.ts";
import { digest } from "../../parts/digest.ts";
import { ask } from "../../parts/edge.ts";
import { JobPage, type JobTold } from "../../parts/job-page.tsx";
import { Link } from "../../parts/link.tsx";
import { useNews } from "../../parts/news.ts";
import { jobPath } from "../../parts/place.ts";
import { useSpeaking } from "../../parts/speaking.ts";
import { signerOf } from "../message/addressee.ts";
import { SaidForm } from "./said-form.tsx";
import { type Beside, SameSite, textBeside } from "./same-site.tsx";
import { useWarranted, type Warranted } from "./warranted.ts";

/** How a job was handed over: signed, delivered without a signature, or accepted by use. */
export const HandedOverPage = ({ job }: { readonly job: string }) => (
  <JobPage job={job}>{(told) => <Handing job={job} told={told} />}</JobPage>
);

function Handing({ job, told }: { readonly job: string; readonly told: JobTold }) {
  const { say, session } = useSpeaking();
  const warranted = useWarranted(told.now);
  const sayer = makeWarrantySayer(session.language);
  return (
    <section class="after-work">
      <h2>{say("handed-title")}</h2>
      {warranted === undefined ? (
        <p>{say("after-terms-waiting")}</p>
      ) : (
        <>
          <p>{sayer.handed(warranted.over, warranted.today)}</p>
          {warranted.clocks.objections.map((objection) => (
            <blockquote key={objection}>{objection}</blockquote>
          ))}
          <Shown job={job} told={told} warranted={warranted} />
        </>
      )}
      <Link to={jobPath(job)}>{say("looking-to-job")}</Link>
    </section>
  );
}

/** The very text that is signed, in the language of the one who signs, and the ways to hand over. */
function Shown({ job, told, warranted }: { readonly job: string; readonly told: JobTold; readonly warranted: Warranted }) {
  const { say } = useSpeaking();
  const [language, setLanguage] = useState<Language>(warranted.clocks.language);
  const [beside, setBeside] = useState<Beside>(new Map());
  const company = useNews("company", () => ask<CompanyView>("/api/company")).value;
  const own = handingOverText({
    language,
    job: told.now.view.title,
    terms: warranted.terms,
    covers: warranted.covers,
    leftToDo: told.now.handingOver.leftToDo,
  });
  const text = [own, ...[...beside.values()].map((now) => textBeside(now, company, language))].join("\n");
  const shown = async () => ({
    language,
    text,
    textDigest: await digest(text),
  });
  const signer = signerOf(told.now.state);
  const because = (["not reached", "declined", "vacant"] as const).map((value) => ({ value, title: say(`handed-because-${value}`) }));
  return (
    <>
      <fieldset class="choices">
        <legend>{say("handed-language")}</legend>
        {(["en", "es"] as const).map((one) => (
          <label key={one} class="target">
            <input type="radio" name="shown" checked={language === one} onChange={() => setLanguage(one)} /> {say(`handed-language-${one}`)}
          </label>
        ))}
      </fieldset>
      <SameSite job={job} beside={beside} chosen={setBeside} />
      <p>{say("handed-text-why")}</p>
      <pre class="shown-text" lang={language}>
        {text}
      </pre>
      <p>{say("after-lawyer")}</p>
      <SaidForm
        job={job}
        kind="signed"
        title="handed-sign"
        enter="handed-sign-enter"
        fields={[
          { name: "name", word: "handed-name", required: true, who: true, ...(signer.name !== undefined && { value: signer.name }) },
          {
            name: "relation",
            word: "handed-relation",
            required: true,
            ...(signer.of !== undefined && { value: say(`handed-signs-${signer.of}`) }),
          },
        ]}
        more={shown}
        beside={[...beside.keys()]}
      />
      <SaidForm
        job={job}
        kind="delivered-unsigned"
        title="handed-unsigned"
        enter="handed-unsigned-enter"
        fields={[
          { name: "because", word: "handed-because", choices: because, required: true },
          { name: "day", word: "handed-day", reads: "day", required: true },
          { name: "how", word: "handed-how", required: true },
          { name: "to", word: "handed-to", required: true },
          { name: "objection", word: "handed-objection", reads: "long" },
        ]}
        more={shown}
        beside={[...beside.keys()]}
      />
      <p>
        {say(warranted.terms.acceptedByUseAfterDays === undefined ? "handed-use-none" : "handed-use-days", {
          days: warranted.terms.acceptedByUseAfterDays ?? 0,
        })}
      </p>
      <SaidForm
        job={job}
        kind="in-use"
        title="handed-use"
        enter="handed-use-enter"
        fields={[
          { name: "since", word: "handed-use-since", reads: "day", required: true },
          { name: "how", word: "handed-use-how", required: true },
        ]}
      />
    </>
  );
}
