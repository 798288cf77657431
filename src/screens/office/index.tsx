import { useMemo } from "preact/hooks";
import { isToDecide, picturesToLookAt, recordBeforeMove } from "../../job/index.ts";
import { exceptionsOf } from "../parts/counts.ts";
import { DoneCovering, OpenCovering } from "../parts/covering.tsx";
import { Exceptions } from "../parts/exceptions.tsx";
import { Frame } from "../parts/frame.tsx";
import { BeforehandViews, HandingOverView } from "../parts/handing-over.tsx";
import { CoveringLine, useJobs } from "../parts/job-list.tsx";
import { JobPage, type JobTold } from "../parts/job-page.tsx";
import { Link } from "../parts/link.tsx";
import { saidOfPhotos } from "../parts/measured.ts";
import { soonestFirst } from "../parts/order.ts";
import { ACCESS_PATH, CHECK_PATH, jobPath, officePath } from "../parts/place.ts";
import { Records, useRecords } from "../parts/records.tsx";
import { NotJudged, Section } from "../parts/section.tsx";
import { useSpeaking } from "../parts/speaking.ts";
import { Steps } from "../parts/steps.tsx";
import { AboutToBeBuried } from "./buried.tsx";
import { IssueRecord } from "./issue.tsx";
import { LaidAsideLink } from "./laid-aside-known.tsx";
import { MovedSince } from "./moving.tsx";
import { Releasing } from "./releasing.tsx";
import { SeenBeforeLink } from "./seen-before-known.tsx";
import { TakeOut } from "./take-out.tsx";

/** Every job of the company, soonest covering first, with the state of each covering. */
export function OfficeJobs() {
  const { say } = useSpeaking();
  const news = useJobs();
  const jobs = soonestFirst(news.value ?? []);
  return (
    <Frame title={say("jobs")} news={news}>
      <AboutToBeBuried />
      <p class="looking-keys">
        <Link to={officePath("opening")}>{say("opening-new")}</Link>
        <Link to={officePath("table")}>{say("table-title")}</Link>
        <Link to={officePath("archive")}>{say("archive-in-title")}</Link>
        <Link to={officePath("warranties")}>{say("register-open")}</Link>
        <Link to={CHECK_PATH}>{say("checking-open")}</Link>
        <Link to={officePath("callbacks")}>{say("callbacks-all")}</Link>
        <Link to={officePath("sheets")}>{say("sheets-open")}</Link>
        <Link to={officePath("kits")}>{say("kits-open")}</Link>
        <Link to={officePath("sites")}>{say("sites-open")}</Link>
        <Link to={officePath("company")}>{say("company-open")}</Link>
        <Link to={officePath("persons")}>{say("persons-open")}</Link>
        <Link to={officePath("keeping")}>{say("keeping-open")}</Link>
        <Link to={officePath("people")}>{say("people-open")}</Link>
        <Link to={ACCESS_PATH}>{say("access-open")}</Link>
        <LaidAsideLink />
      </p>
      <p>{say(news.value !== undefined && jobs.length === 0 ? "no-jobs" : "jobs-order")}</p>
      <NotJudged />
      <ul class="jobs">
        {jobs.map((job) => (
          <li key={job.job}>
            <Link to={jobPath(job.job)} class="job-link">
              <h2>{job.title}</h2>
              {job.ownNumber !== undefined && <p class="own-number">{job.ownNumber}</p>}
              {job.state.coverings.map((covering) => (
                <CoveringLine key={covering.covering} covering={covering} />
              ))}
            </Link>
          </li>
        ))}
      </ul>
      <TakeOut />
    </Frame>
  );
}

/** A job for the office: coverings, what to read first, records, and every step with its pictures. */
export const OfficeJob = ({ job }: { readonly job: string }) => (
  <JobPage job={job}>{(told) => <OfficeJobParts job={job} {...told} />}</JobPage>
);

function OfficeJobParts({ job, now, sayer, pictures }: JobTold & { readonly job: string }) {
  const { say, session } = useSpeaking();
  const records = useRecords(job);
  const photos = useMemo(() => saidOfPhotos(now, session.language, session.units), [now, session.language, session.units]);
  const coverings = [...now.clearances].sort((a, b) => Number(a.covered !== undefined) - Number(b.covered !== undefined));
  return (
    <>
      <Section title="counts-coverings" look="coverings">
        <NotJudged />
        {coverings.map((clearance) => {
          const View = clearance.covered === undefined ? OpenCovering : DoneCovering;
          return <View key={clearance.covering} clearance={clearance} now={now} sayer={sayer} />;
        })}
      </Section>
      <Exceptions now={now} sayer={sayer} />
      <p class="looking-keys">
        <Link to={jobPath(job, "deciding")}>{say("deciding-open", { count: now.findings.filter(isToDecide).length })}</Link>
        <Link to={jobPath(job, "looking")}>{say("looking-open", { count: picturesToLookAt(now.state).length })}</Link>
        <Link to={jobPath(job, "received")}>{say("received-open")}</Link>
        <Link to={jobPath(job, "moving")}>{say("moving-open")}</Link>
        <SeenBeforeLink job={job} />
        <Link to={jobPath(job, "versions")}>{say("job-versions-open")}</Link>
        <Link to={jobPath(job, "particulars")}>{say("particulars-change")}</Link>
        <Link to={jobPath(job, "papers")}>{say("papers-open")}</Link>
        <Link to={jobPath(job, "site")}>{say("site-place-open")}</Link>
        <Link to={jobPath(job, "handed-over")}>{say("handed-title")}</Link>
        <Link to={jobPath(job, "warranty")}>{say("warranty-open")}</Link>
        <Link to={jobPath(job, "callbacks")}>{say("callbacks-title")}</Link>
      </p>
      <Section title="records" look="issued">
        <MovedSince version={recordBeforeMove(now.state)} />
        <Records news={records} sayer={sayer} />
        <Releasing records={records.value?.records ?? []} job={job} now={now} />
        <IssueRecord job={job} issued={records.again} spoken={now.state.opened?.language} />
      </Section>
      <Section title="design-check">
        <p>
          <a class="target" href={`/api/jobs/${job}/design/pdf`} target="_blank" rel="noreferrer">
            {say("design-check-open")}
          </a>
        </p>
      </Section>
      <Section title="cards">
        <p>{say("cards-what")}</p>
        <p>
          <a class="target" href={`/api/jobs/${job}/cards/pdf`} target="_blank" rel="noreferrer">
            {say("cards-open")}
          </a>
        </p>
      </Section>
      <TakeOut job={job} />
      <BeforehandViews now={now} sayer={sayer} />
      <HandingOverView now={now} sayer={sayer} />
      {pictures.length === 0 && <p>{say("pictures-none")}</p>}
      <Steps {...{ now, sayer, pictures, photos }} originals={true} opened={(findings) => exceptionsOf(findings).found.length > 0} />
    </>
  );
}
