import { useState } from "preact/hooks";
import { type VersionTaken, versionsTaken } from "../../../job/index.ts";
import type { CompanyView } from "../../../wire/index.ts";
import { ask } from "../../parts/edge.ts";
import type { JobNow } from "../../parts/job-now.ts";
import { JobPage, type JobTold } from "../../parts/job-page.tsx";
import { Link } from "../../parts/link.tsx";
import { useNews } from "../../parts/news.ts";
import { jobPath, officePath } from "../../parts/place.ts";
import { Section } from "../../parts/section.tsx";
import { momentHere, type Speaking, useSpeaking } from "../../parts/speaking.ts";
import { wordsIn } from "../words-in.ts";
import { type Newer, OfferedVersion } from "./offered.tsx";

/** What the job took over, oldest first, and which of it is judged by now. */
function Taken({ now }: { readonly now: JobNow }) {
  const { say, session } = useSpeaking();
  const titleOf = ({ thing, name, digest, number }: VersionTaken): string => {
    const content = now.state.ledger.versions[digest] as
      | { readonly title?: unknown; readonly part?: string; readonly version?: number }
      | undefined;
    if (thing === "sheet") return `${wordsIn(content?.title, session.language) || name}, ${content?.version ?? number}`;
    return `${content?.part ?? name}, ${say("versions-entry", { number })}`;
  };
  return (
    <ul class="findings">
      {versionsTaken(now.state)
        .filter(({ thing }) => thing !== "settings")
        .map((one) => (
          <li key={`${one.at} ${one.digest}`}>
            <p>
              {say("job-versions-taken", {
                thing: say(one.thing === "sheet" ? "job-versions-sheet" : "job-versions-kit"),
                title: titleOf(one),
                time: momentHere(one.at, session.language),
              })}
              : <b>{say(one.current ? "job-versions-current" : "job-versions-earlier")}</b>
            </p>
            {one.thing === "sheet" && <Link to={officePath("sheets", one.digest)}>{say("versions-read")}</Link>}
          </li>
        ))}
    </ul>
  );
}

/** The company's newest of each thing that the job is judged by, where that is another. */
function newerOf(now: JobNow, company: CompanyView, { say, session }: Pick<Speaking, "say" | "session">): readonly Newer[] {
  const held = versionsTaken(now.state).filter(({ current }) => current);
  const all = [
    ...company.sheets.map((one) => ({
      ...one,
      thing: "sheet" as const,
      title: `${wordsIn(one.title, session.language) || one.name}, ${one.version}`,
    })),
    ...company.kitCards.map((one) => ({
      ...one,
      thing: "kit card" as const,
      title: `${one.part}, ${say("versions-entry", { number: one.number })}`,
    })),
  ];
  return all.flatMap(({ thing, name, number, digest, title }) => {
    const own = held.find((taken) => taken.thing === thing && taken.name === name);
    return own === undefined || own.digest === digest
      ? []
      : [{ thing, name, number, digest, title, held: now.state.ledger.versions[own.digest] }];
  });
}

function JobVersionsParts({ now, again }: JobTold) {
  const { say, session } = useSpeaking();
  const { job } = now.view;
  const company = useNews("company", () => ask<CompanyView>("/api/company"));
  const [moved, setMoved] = useState<string>();
  const newer = company.value === undefined ? undefined : newerOf(now, company.value, { say, session });
  return (
    <>
      <p class="looking-keys">
        <Link to={jobPath(job)}>{say("looking-to-job")}</Link>
      </p>
      <Section title="job-versions-title" look="issued">
        <p>{say("job-versions-how")}</p>
        <div role="status" class="answer">
          {moved !== undefined && <p>{say("job-versions-moved", { title: moved })}</p>}
        </div>
        <Taken now={now} />
        {newer?.length === 0 && <p>{say("job-versions-newest")}</p>}
        {newer?.map((one) => (
          <OfferedVersion
            key={one.digest}
            now={now}
            newer={one}
            moved={() => {
              setMoved(one.title);
              again();
            }}
          />
        ))}
      </Section>
    </>
  );
}

/** What a job is judged by, and moving it to a newer version with what that would change told before. */
export const JobVersions = ({ job }: { readonly job: string }) => <JobPage job={job}>{(told) => <JobVersionsParts {...told} />}</JobPage>;
