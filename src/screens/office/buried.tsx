import type { About, Words } from "../../job/index.ts";
import type { BuriedList } from "../../wire/index.ts";
import { ask } from "../parts/edge.ts";
import { NewsLine } from "../parts/frame.tsx";
import { Link } from "../parts/link.tsx";
import { useNews } from "../parts/news.ts";
import { jobPath } from "../parts/place.ts";
import type { Shape } from "../parts/shapes.ts";
import { Sign } from "../parts/sign.tsx";
import { momentHere, refusalText, useSpeaking } from "../parts/speaking.ts";
import { counted } from "../parts/words/index.ts";
import { aboutPath } from "./about-path.ts";

type ListedJob = BuriedList["jobs"][number];
type Line = ListedJob["lines"][number];

const shapes: Readonly<Record<Line["is"], Shape>> = {
  announced: "outside",
  "covered on a not yet": "outside",
  "later doubted": "undecided",
  "covered unsaid": "undecided",
  outside: "outside",
  "too close to call": "undecided",
  "tape and photo disagree": "undecided",
  unreadable: "undecided",
  "seen before": "undecided",
  "to look at": "apart",
  "open tonight": "missing",
  "phone silent": "missing",
};

/** Where a line is settled. */
function pathOf(job: string, { is, about }: Line): string {
  if (is === "to look at") return jobPath(job, "looking");
  if (is === "seen before") return jobPath(job, "seen-before");
  if (is === "open tonight" || is === "phone silent") return jobPath(job);
  return about === undefined ? jobPath(job, "deciding") : jobPath(job, "deciding", ...aboutPath(about as About));
}

/** Everything that is about to be buried, over all running jobs: one line for one thing, each leading to where it is settled. */
export function AboutToBeBuried() {
  const { say, session } = useSpeaking();
  const news = useNews("about to be buried", () => ask<BuriedList>("/api/about-to-be-buried"));
  const jobs = news.value?.jobs ?? [];
  return (
    <section class="buried" aria-labelledby="buried">
      <h2 id="buried">{say("buried-title")}</h2>
      {news.problem === undefined ? <NewsLine news={news} /> : <p role="status">{refusalText(news.problem, session)}</p>}
      {news.value !== undefined && <p>{say(jobs.length === 0 ? "buried-none" : "buried-order")}</p>}
      {jobs.map((job) => (
        <article key={job.job}>
          <h3>
            <Link to={jobPath(job.job)}>
              {job.title}
              {job.ownNumber === undefined ? "" : `, ${job.ownNumber}`}
            </Link>
          </h3>
          {job.soonest !== undefined && <p>{say("buried-soonest", { time: momentHere(job.soonest, session.language) })}</p>}
          <ul>
            {job.lines.map((line) => (
              <li key={JSON.stringify([line.is, line.about, line.title, line.name])}>
                <Link to={pathOf(job.job, line)} class="buried-line target">
                  <Sign shape={shapes[line.is]} />
                  <LineText line={line} />
                </Link>
              </li>
            ))}
          </ul>
        </article>
      ))}
    </section>
  );
}

function LineText({ line }: { readonly line: Line }) {
  const { say, session } = useSpeaking();
  const { language } = session;
  const words = line.title as unknown as Words | undefined;
  const figures = {
    title: words?.[language] ?? words?.en ?? "",
    says: line.says?.[language] ?? words?.[language] ?? words?.en ?? "",
    time: line.at === undefined ? "" : momentHere(line.at, language),
    held: counted(say, "held-by", line.count ?? 0),
    count: line.count ?? 0,
    name: line.name === undefined || line.name === "" ? say("someone") : line.name,
  };
  return (
    <span>
      {line.is === "open tonight" ? say(`buried-open tonight-${line.tonight ?? "missing"}`, figures) : say(`buried-${line.is}`, figures)}
    </span>
  );
}
