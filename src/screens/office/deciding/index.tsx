import type { About, Finding } from "../../../job/index.ts";
import { isToDecide, reworkAsked } from "../../../job/index.ts";
import { findingBehind } from "../../parts/counts.ts";
import { JobPage, type JobTold } from "../../parts/job-page.tsx";
import { Link } from "../../parts/link.tsx";
import { jobPath } from "../../parts/place.ts";
import { shapeOfFinding } from "../../parts/shapes.ts";
import { Sign } from "../../parts/sign.tsx";
import { useSpeaking } from "../../parts/speaking.ts";
import { aboutIn, aboutPath } from "../about-path.ts";
import { Before, Entered, Seen } from "./beside.tsx";
import { Decisions } from "./decisions.tsx";
import { Inspections } from "./inspections.tsx";
import { OthersLinks } from "./others.tsx";
import { WordsByTelephone } from "./words-by-telephone.tsx";

interface DecidingProps {
  readonly job: string;
  /** What is decided about, as the path names it; nothing: all of the job that is to be decided. */
  readonly rest: readonly string[];
}

/** What the office decides about a job. */
export function Deciding({ job, rest }: DecidingProps) {
  const about = aboutIn(rest);
  return (
    <JobPage job={job}>
      {(told) => (about === undefined ? <All job={job} told={told} /> : <One key={rest.join(" ")} job={job} told={told} about={about} />)}
    </JobPage>
  );
}

const aboutOf = ({ of, check, tag }: Finding): About => ({
  ...(of === "check" ? { check } : { item: check }),
  ...(tag === undefined ? {} : { tag }),
});

/** Everything of the job that waits for a decision: what is not as asked, what holds a covering, words by telephone, inspections. */
function All({ job, told }: { readonly job: string; readonly told: JobTold }) {
  const { say } = useSpeaking();
  const { now, sayer } = told;
  const found = now.findings.filter(isToDecide);
  const known = new Set(found.map((finding) => JSON.stringify(aboutPath(aboutOf(finding)))));
  const held = now.clearances
    .filter(({ state, covered }) => state === "not yet" && covered?.beforeRecord !== true)
    .map((clearance) => ({
      clearance,
      lines: clearance.lines.filter(({ about }) => !known.has(JSON.stringify(aboutPath(about)))),
    }))
    .filter(({ lines }) => lines.length > 0);
  const asked = reworkAsked(now.state);
  return (
    <section class="deciding">
      <h2>{say("deciding-title")}</h2>
      <p>{say(found.length === 0 ? "deciding-none" : "deciding-how")}</p>
      <ul class="buried">
        {found.map((finding) => (
          <li key={JSON.stringify(aboutOf(finding))}>
            <Link to={jobPath(job, "deciding", ...aboutPath(aboutOf(finding)))} class="buried-line target">
              <Sign shape={shapeOfFinding(finding)} />
              <span>{sayer.finding(finding)}</span>
            </Link>
          </li>
        ))}
      </ul>
      <WordsByTelephone job={job} told={told} />
      {asked.length > 0 && (
        <section>
          <h3>{say("deciding-rework-open")}</h3>
          <ul class="findings">
            {asked.map(({ entry, about, reason, at }) => (
              <li key={entry}>
                <span>
                  {sayer.title(about)}: {reason} ({sayer.moment(at)})
                </span>
              </li>
            ))}
          </ul>
        </section>
      )}
      {held.map(({ clearance, lines }) => (
        <details key={clearance.covering}>
          <summary class="target">
            {say("deciding-also-holds", {
              act: sayer.words(now.state.sheet?.coverings.find(({ id }) => id === clearance.covering)?.title),
              count: lines.length,
            })}
          </summary>
          <ul class="buried">
            {lines.map((line) => (
              <li key={JSON.stringify(line.about)}>
                <Link to={jobPath(job, "deciding", ...aboutPath(line.about))} class="buried-line target">
                  <Sign shape="missing" />
                  <span>{sayer.line(line)}</span>
                </Link>
              </li>
            ))}
          </ul>
        </details>
      ))}
      <OthersLinks job={job} told={told} />
      <Inspections job={job} told={told} />
      <Link to={jobPath(job)}>{say("looking-to-job")}</Link>
    </section>
  );
}

/** One thing: what was found, what was entered and seen beside it, and what can be decided. */
function One({ job, told, about }: { readonly job: string; readonly told: JobTold; readonly about: About }) {
  const { say } = useSpeaking();
  const { now, sayer } = told;
  const finding = findingBehind(now.findings, about);
  const act = now.state.sheet?.coverings.find(({ id }) => id === finding?.holds)?.title;
  return (
    <section class="deciding">
      <h2>{sayer.title(about)}</h2>
      {finding === undefined ? (
        <p>{say("deciding-not-asked")}</p>
      ) : (
        <p class="says">
          <Sign shape={shapeOfFinding(finding)} />
          <span>{sayer.finding(finding)}</span>
        </p>
      )}
      {act !== undefined && <p>{say("looking-holds", { act: sayer.words(act) })}</p>}
      <div class="beside">
        <div>
          <h3>{say("deciding-entered")}</h3>
          <Entered told={told} about={about} finding={finding} />
          <Before told={told} about={about} />
        </div>
        <div>
          <h3>{say("pictures")}</h3>
          <Seen told={told} about={about} finding={finding} job={job} />
        </div>
      </div>
      <Decisions job={job} told={told} about={about} finding={finding} />
      <Link to={jobPath(job, "deciding")}>{say("deciding-to-all")}</Link>
    </section>
  );
}
