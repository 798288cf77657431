import type { PersonFound } from "../../../wire/index.ts";
import { Link } from "../../parts/link.tsx";
import { jobPath } from "../../parts/place.ts";
import { dayInWords, momentHere, useSpeaking } from "../../parts/speaking.ts";

/** What the parts of the page are about. `again`: reads it anew. */
export interface About {
  readonly found: PersonFound;
  readonly again: () => void;
}

/** Where the person is named: in which jobs, and in what the company itself holds. */
export function Everywhere({ found: { jobs, company } }: About) {
  const { say, session } = useSpeaking();
  const isNothing = jobs.length === 0 && company.entries + company.sites + company.oldWarranties === 0 && !company.isPerson;
  return (
    <section>
      <h2>{say("persons-found")}</h2>
      {isNothing && <p>{say("persons-found-none")}</p>}
      <ul class="shown">
        {jobs.map(({ job, title, ownNumber, entries, isTheirs, coveredUntil, callbacks }) => (
          <li key={job}>
            <Link to={jobPath(job)}>{title === "" ? job : title}</Link> <span class="own-number">{ownNumber}</span>
            <p>{say("persons-found-job", { entries })}</p>
            {isTheirs && <p>{say("persons-found-theirs")}</p>}
            {coveredUntil !== undefined && <p>{say("persons-found-covered", { until: dayInWords(coveredUntil, session.language) })}</p>}
            {callbacks > 0 && <p>{say("persons-found-callbacks", { count: callbacks })}</p>}
          </li>
        ))}
        {company.entries > 0 && <li>{say("persons-found-company", { entries: company.entries })}</li>}
        {company.sites > 0 && <li>{say("persons-found-sites", { count: company.sites })}</li>}
        {company.oldWarranties > 0 && <li>{say("persons-found-old", { count: company.oldWarranties })}</li>}
        {company.isPerson && <li>{say("persons-found-person")}</li>}
      </ul>
    </section>
  );
}

/** Records that left the company. */
export function HandedOut({ found: { handedOut } }: { readonly found: PersonFound }) {
  const { say, session } = useSpeaking();
  if (handedOut.length === 0) return null;
  return (
    <section>
      <p>{say("persons-handed")}</p>
      <ul class="shown">
        {handedOut.map(({ job, title, version, issued, releases }) => {
          const figures = { title: title === "" ? job : title, version, time: momentHere(issued, session.language) };
          const to = releases.map((one) => one.to).join("; ");
          return (
            <li key={`${job} ${version}`}>
              {to === "" ? say("persons-handed-line", figures) : say("persons-handed-to", { ...figures, to })}
            </li>
          );
        })}
      </ul>
    </section>
  );
}
