import { useState } from "preact/hooks";
import { handingOverText } from "../../../record/index.ts";
import type { CompanyView, Language, SiteList } from "../../../wire/index.ts";
import { ask } from "../../parts/edge.ts";
import { useJobs } from "../../parts/job-list.tsx";
import { type JobNow, readJob } from "../../parts/job-now.ts";
import { useNews } from "../../parts/news.ts";
import { useSpeaking } from "../../parts/speaking.ts";
import { warrantedBy } from "./warranted.ts";

/** Other jobs of the site that are handed over with this one, as they were read when they were chosen. */
export type Beside = ReadonlyMap<string, JobNow>;

/** What is shown of a job that is handed over with another; nothing while its terms are not read. */
export function textBeside(now: JobNow, company: CompanyView | undefined, language: Language): string {
  const warranted = warrantedBy(now.state, company);
  if (warranted === undefined) return "";
  const { terms, covers } = warranted;
  return handingOverText({ language, job: now.view.title, terms, covers, leftToDo: now.handingOver.leftToDo });
}

interface SameSiteProps {
  readonly job: string;
  readonly beside: Beside;
  readonly chosen: (beside: Beside) => void;
}

/** Several waterfalls are several jobs of one site: they can be handed over in one. */
export function SameSite({ job, beside, chosen }: SameSiteProps) {
  const { say } = useSpeaking();
  const sites = useNews("sites", () => ask<SiteList>("/api/sites"));
  const titles = useJobs().value ?? [];
  const [away, setAway] = useState(false);
  const others = (sites.value?.sites ?? [])
    .filter(({ jobs }) => jobs.includes(job))
    .flatMap(({ jobs }) => jobs.filter((one) => one !== job));
  if (others.length === 0) return null;
  const choose = async (other: string, isChosen: boolean): Promise<void> => {
    const next = new Map(beside);
    next.delete(other);
    if (isChosen) {
      const read = await readJob(other, undefined, false);
      setAway(read.is !== "given");
      if (read.is === "given") next.set(other, read.value);
    }
    chosen(next);
  };
  return (
    <fieldset class="choices">
      <legend>{say("handed-same-site")}</legend>
      {others.map((other) => (
        <label key={other} class="target">
          <input type="checkbox" checked={beside.has(other)} onChange={(event) => void choose(other, event.currentTarget.checked)} />
          <span>{titles.find((one) => one.job === other)?.title ?? other}</span>
        </label>
      ))}
      <p role="status">{away && say("after-away")}</p>
    </fieldset>
  );
}
