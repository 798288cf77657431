import { useState } from "preact/hooks";
import { type PhotoUse, type Turn, undone } from "../../photo/index.ts";
import type { SeenBefore as Pair } from "../../wire/index.ts";
import { useJobs } from "../parts/job-list.tsx";
import { JobPage } from "../parts/job-page.tsx";
import { Link } from "../parts/link.tsx";
import type { ListedJob } from "../parts/order.ts";
import { jobPath } from "../parts/place.ts";
import { momentHere, refusalText, useSpeaking } from "../parts/speaking.ts";
import type { ScreenWord } from "../parts/words/index.ts";
import type { Spot } from "./marked-parts.ts";
import { useSeenBefore } from "./seen-before-known.tsx";
import { turnedSpot } from "./turned-spot.ts";

/** The edge lists no more at a time. */
const MOST = 200;
const MIDDLE: Spot = { x: 0.5, y: 0.5 };

/** Pictures that show the same, side by side: a person compares them, the program accuses nobody. */
export const SeenBefore = ({ job }: { readonly job: string }) => <JobPage job={job}>{() => <Pairs job={job} />}</JobPage>;

function Pairs({ job }: { readonly job: string }) {
  const { say, session } = useSpeaking();
  const { value, problem, awaySince } = useSeenBefore(job);
  const jobs = useJobs().value ?? [];
  const pairs = value?.seenBefore ?? [];
  return (
    <section class="seen-before">
      <h2>{say("seen-before-title")}</h2>
      <p>{say("seen-before-how")}</p>
      <p role="status">
        {value === undefined && problem === undefined && say(awaySince === undefined ? "reading-first" : "away-first")}
        {problem !== undefined && refusalText(problem, session)}
        {value !== undefined && pairs.length === 0 && say("seen-before-none")}
        {pairs.length >= MOST && say("seen-before-most", { count: MOST })}
      </p>
      {pairs.map((pair) => (
        <PairView key={`${pair.photo.sha256} ${pair.before.sha256}`} pair={pair} job={job} jobs={jobs} />
      ))}
      <Link to={jobPath(job)}>{say("looking-to-job")}</Link>
    </section>
  );
}

interface Side {
  readonly label: ScreenWord;
  readonly sha256: string;
  readonly usedIn: readonly PhotoUse[];
  /** How it is turned to lie as the earlier one. */
  readonly turn: Turn;
}

/** One file that two jobs name stands on both sides, each with its own uses. */
function sidesOf({ photo, before, how, turn }: Pair): readonly Side[] {
  if (how === "bytes")
    return [
      { ...before, label: "seen-before-here", usedIn: before.usedIn.slice(0, 1), turn: 1 },
      { ...photo, label: "seen-before-there", usedIn: photo.usedIn.slice(1), turn: 1 },
    ];
  return [
    { ...before, label: "seen-before-earlier", turn: 1 },
    { ...photo, label: "seen-before-later", turn: turn as Turn },
  ];
}

interface PairProps {
  readonly pair: Pair;
  readonly job: string;
  readonly jobs: readonly ListedJob[];
}

function PairView({ pair, job, jobs }: PairProps) {
  const { say } = useSpeaking();
  // in shares of the earlier picture, so that both grow at the same thing however the later one lies
  const [near, setNear] = useState<Spot>();
  return (
    <article class="pair">
      <p>
        <b>{say(`seen-before-${pair.weight}`)}</b>
      </p>
      <p>
        {say(`seen-before-${pair.how}`, { count: pair.distance })} {say(`seen-before-turn-${pair.turn as Turn}`)}
      </p>
      <div class="two-pictures">
        {sidesOf(pair).map((side) => (
          <figure key={side.label} class="picture">
            <Enlarged
              side={side}
              near={near && turnedSpot(undone(side.turn), near)}
              onTouched={(spot) => setNear(near === undefined ? turnedSpot(side.turn, spot) : undefined)}
            />
            <figcaption>
              <p class="name">{say(side.label)}</p>
              <Uses uses={side.usedIn} job={job} jobs={jobs} />
            </figcaption>
          </figure>
        ))}
      </div>
    </article>
  );
}

interface EnlargedProps {
  readonly side: Side;
  readonly near: Spot | undefined;
  readonly onTouched: (spot: Spot) => void;
}

/** A picture that grows about a spot; from the keyboard about its middle. */
function Enlarged({ side: { sha256, label }, near, onTouched }: EnlargedProps) {
  const { say } = useSpeaking();
  const touched = (event: MouseEvent): void => {
    const box = (event.currentTarget as Element).getBoundingClientRect();
    const spot = { x: (event.clientX - box.left) / box.width, y: (event.clientY - box.top) / box.height };
    onTouched(event.detail === 0 ? MIDDLE : spot);
  };
  return (
    <button type="button" class="enlarges" aria-pressed={near !== undefined} onClick={touched}>
      <img
        class={near === undefined ? "" : "near"}
        style={{ transformOrigin: near === undefined ? "" : `${near.x * 100}% ${near.y * 100}%` }}
        src={`/api/photos/${sha256}/screen`}
        alt={say("seen-before-enlarge", { which: say(label) })}
        loading="lazy"
      />
    </button>
  );
}

/** Which jobs name a picture and when; the others are linked. */
function Uses({ uses, job, jobs }: { readonly uses: readonly PhotoUse[] } & Omit<PairProps, "pair">) {
  const { say, session } = useSpeaking();
  if (uses.length === 0) return <p>{say("seen-before-nowhere")}</p>;
  return (
    <ul>
      {uses.map((use) => {
        const title = jobs.find((one) => one.job === use.job)?.title ?? use.job;
        const time = use.made === null ? say("seen-before-time-unknown") : momentHere(use.made, session.language);
        return (
          <li key={use.job}>
            {use.job === job ? <b>{say("seen-before-this-job")}</b> : <Link to={jobPath(use.job)}>{title}</Link>} {time}
          </li>
        );
      })}
    </ul>
  );
}
