import { useMemo, useState } from "preact/hooks";
import { countsOf } from "../parts/counts.ts";
import { DoneCovering, OpenCovering } from "../parts/covering.tsx";
import { Exceptions } from "../parts/exceptions.tsx";
import { Frame } from "../parts/frame.tsx";
import { BeforehandViews, HandingOverView } from "../parts/handing-over.tsx";
import { useJobs } from "../parts/job-list.tsx";
import { JobPage, type JobTold } from "../parts/job-page.tsx";
import { Link } from "../parts/link.tsx";
import { saidOfPhotos } from "../parts/measured.ts";
import { useNews } from "../parts/news.ts";
import type { ListedJob } from "../parts/order.ts";
import { ACCESS_PATH, jobPath, officePath } from "../parts/place.ts";
import { Records, useRecords } from "../parts/records.tsx";
import { NotJudged, Section } from "../parts/section.tsx";
import { useSpeaking } from "../parts/speaking.ts";
import { Steps } from "../parts/steps.tsx";
import { CountsTable } from "./counts.tsx";
import { Questions } from "./questions.tsx";
import { tallyOf } from "./tally.ts";

/** As many jobs as are counted at once: each is two questions to the edge. */
const COUNTED_AT_ONCE = 8;

function JobTally({ job }: { readonly job: ListedJob }) {
  const { say } = useSpeaking();
  const { value } = useNews(`tally ${job.job} ${job.entries}`, () => tallyOf(job.job));
  return (
    <li>
      <Link to={jobPath(job.job)} class="job-link">
        <h2>{job.title}</h2>
        {job.ownNumber !== undefined && <p class="own-number">{job.ownNumber}</p>}
      </Link>
      {value === undefined ? <p>{say("counts-counting")}</p> : <CountsTable counts={value.counts} records={value.records} />}
    </li>
  );
}

/** Every job of the company with what it has, in plain numbers. */
export function OwnerJobs() {
  const { say } = useSpeaking();
  const news = useJobs();
  const [most, setMost] = useState(COUNTED_AT_ONCE);
  const jobs = news.value ?? [];
  return (
    <Frame title={say("counts-title")} news={news}>
      <Questions />
      <h2>{say("jobs")}</h2>
      <p class="looking-keys">
        <Link to={officePath("company")}>{say("company-open")}</Link>
        <Link to={officePath("persons")}>{say("persons-open")}</Link>
        <Link to={officePath("keeping")}>{say("keeping-open")}</Link>
        <Link to={officePath("people")}>{say("people-open")}</Link>
        <Link to={ACCESS_PATH}>{say("access-open")}</Link>
      </p>
      {news.value !== undefined && jobs.length === 0 && <p>{say("no-jobs")}</p>}
      <ul class="jobs counted">
        {jobs.slice(0, most).map((job) => (
          <JobTally key={job.job} job={job} />
        ))}
      </ul>
      {jobs.length > most && (
        <button type="button" class="target" onClick={() => setMost(most + COUNTED_AT_ONCE)}>
          {say("counts-more")}
        </button>
      )}
    </Frame>
  );
}

/** A job for the company owner: its counts, what to read first, coverings, records and steps. */
export const OwnerJob = ({ job }: { readonly job: string }) => (
  <JobPage job={job}>{(told) => <OwnerJobParts job={job} {...told} />}</JobPage>
);

function OwnerJobParts({ job, now, sayer, pictures }: JobTold & { readonly job: string }) {
  const { session } = useSpeaking();
  const records = useRecords(job);
  const photos = useMemo(() => saidOfPhotos(now, session.language, session.units), [now, session.language, session.units]);
  return (
    <>
      <Section title="findings">
        <CountsTable counts={countsOf(now)} records={records.value?.records.length} />
      </Section>
      <Exceptions now={now} sayer={sayer} />
      <Section title="counts-coverings" look="coverings">
        <NotJudged />
        {now.clearances.map((clearance) => {
          const View = clearance.covered === undefined ? OpenCovering : DoneCovering;
          return <View key={clearance.covering} clearance={clearance} now={now} sayer={sayer} />;
        })}
      </Section>
      <Section title="records" look="issued">
        <Records news={records} sayer={sayer} />
      </Section>
      <BeforehandViews now={now} sayer={sayer} />
      <HandingOverView now={now} sayer={sayer} />
      <Steps {...{ now, sayer, pictures, photos }} originals={true} opened={() => false} />
    </>
  );
}
