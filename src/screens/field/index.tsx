import { DoneCovering, NothingOpen, OpenCovering } from "../parts/covering.tsx";
import { Frame } from "../parts/frame.tsx";
import { BeforehandViews, HandingOverView } from "../parts/handing-over.tsx";
import { CoveringLine, useJobs } from "../parts/job-list.tsx";
import { JobPage } from "../parts/job-page.tsx";
import { Link } from "../parts/link.tsx";
import { openOf, soonestFirst } from "../parts/order.ts";
import { jobPath } from "../parts/place.ts";
import { NotJudged, Section } from "../parts/section.tsx";
import { useSpeaking } from "../parts/speaking.ts";
import { Steps } from "../parts/steps.tsx";

/** The crew's first page: whatever is open in the ground, wherever it is. */
export function OpenGround() {
  const { say } = useSpeaking();
  const news = useJobs();
  const jobs = soonestFirst(news.value ?? []);
  return (
    <Frame title={say("open-in-the-ground")} news={news}>
      {news.value !== undefined && jobs.length === 0 && <p>{say("no-jobs")}</p>}
      <NotJudged />
      <ul class="jobs">
        {jobs.map((job) => (
          <li key={job.job}>
            <Link to={jobPath(job.job)} class="job-link">
              <h2>{job.title}</h2>
              {job.ownNumber !== undefined && <p class="own-number">{job.ownNumber}</p>}
              {openOf(job).map((covering) => (
                <CoveringLine key={covering.covering} covering={covering} />
              ))}
              {openOf(job).length === 0 && <p>{say("covered-all")}</p>}
            </Link>
          </li>
        ))}
      </ul>
    </Frame>
  );
}

/** A job for the crew: first what is open and whether it may be covered, then the steps. */
export const FieldJob = ({ job }: { readonly job: string }) => (
  <JobPage job={job}>
    {({ now, sayer, pictures }) => {
      const open = now.clearances.filter(({ covered }) => covered === undefined);
      const done = now.clearances.filter(({ covered }) => covered !== undefined);
      return (
        <>
          <Section title="open-in-the-ground" look="open-ground">
            <NotJudged />
            {open.length === 0 && <NothingOpen />}
            {open.map((clearance) => (
              <OpenCovering key={clearance.covering} clearance={clearance} now={now} sayer={sayer} />
            ))}
          </Section>
          <BeforehandViews now={now} sayer={sayer} />
          <Steps now={now} sayer={sayer} pictures={pictures} originals={false} opened={() => false} />
          <HandingOverView now={now} sayer={sayer} />
          {done.length > 0 && (
            <Section title="covered">
              {done.map((clearance) => (
                <DoneCovering key={clearance.covering} clearance={clearance} now={now} sayer={sayer} />
              ))}
            </Section>
          )}
        </>
      );
    }}
  </JobPage>
);
