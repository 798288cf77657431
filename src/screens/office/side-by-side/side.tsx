import { useMemo, useRef } from "preact/hooks";
import { pictureFacts } from "../../../job/index.ts";
import { makePictureSayer } from "../../../record/index.ts";
import { useJobs } from "../../parts/job-list.tsx";
import { speakingOf } from "../../parts/job-now.ts";
import type { JobTold } from "../../parts/job-page.tsx";
import { Link } from "../../parts/link.tsx";
import type { PictureShown } from "../../parts/pictures.ts";
import { jobPath } from "../../parts/place.ts";
import { useSpeaking } from "../../parts/speaking.ts";
import { useHand } from "./hand.ts";
import { type Near, nearer } from "./near.ts";

interface SideProps {
  readonly told: JobTold;
  readonly title: string;
  readonly address: string;
  /** Of this job; what is told of a picture stands in its own job's ledger. */
  readonly picture?: PictureShown;
  /** Of other jobs: which. */
  readonly jobs?: readonly string[];
  readonly near: Near;
  readonly change: (how: (near: Near) => Near) => void;
}

/** One of the two: its frame, and under it what the ledger tells of it. */
export function Side({ told, title, address, picture, jobs = [], near, change }: SideProps) {
  const { say } = useSpeaking();
  const frame = useRef<HTMLButtonElement>(null);
  useHand(frame, change);
  return (
    <figure class="picture">
      <button
        type="button"
        class={near.times > 1 ? "near-frame moves" : "near-frame"}
        ref={frame}
        aria-label={say("beside-frame", { title })}
        // a hand has its own ways; only a key presses without a place
        onClick={(event) => event.detail === 0 && change((before) => nearer(before, 1.5))}
      >
        <img
          src={address}
          alt=""
          draggable={false}
          style={{ transform: `translate(${near.x * 100}%, ${near.y * 100}%) scale(${near.times})` }}
        />
      </button>
      <figcaption>
        <p class="name">{title}</p>
        {picture === undefined ? <Elsewhere jobs={jobs} /> : <Facts told={told} picture={picture} />}
      </figcaption>
    </figure>
  );
}

/** Where a picture of other jobs is told of. */
function Elsewhere({ jobs }: { readonly jobs: readonly string[] }) {
  const { say } = useSpeaking();
  const listed = useJobs().value ?? [];
  return (
    <>
      <p>{say("beside-facts-elsewhere")}</p>
      <ul>
        {jobs.map((job) => (
          <li key={job}>
            <Link to={jobPath(job)}>{listed.find((one) => one.job === job)?.title ?? job}</Link>
          </li>
        ))}
      </ul>
    </>
  );
}

const SPEAKS = ["against", "for", "neither"] as const;

/** What the ledger tells of a picture: what speaks against it stands first. */
function Facts({ told: { now, sayer }, picture }: { readonly told: JobTold; readonly picture: PictureShown }) {
  const { say, session } = useSpeaking();
  const tells = useMemo(
    () => makePictureSayer(speakingOf(now, session.language, session.units, say("someone"))),
    [now, session.language, session.units, say],
  );
  const fact = now.state.facts.find(({ id }) => id === picture.entry);
  const lines = useMemo(() => (fact === undefined ? [] : pictureFacts(now.state, fact)), [now.state, fact]);
  return (
    <>
      {picture.caption !== "" && <p>{picture.caption}</p>}
      <p>{say("picture-made", { time: sayer.moment(picture.at) })}</p>
      {SPEAKS.filter((speaks) => lines.some((line) => line.speaks === speaks)).map((speaks) => (
        <div key={speaks} class={`speaks ${speaks}`}>
          <h3>{say(`beside-speaks-${speaks}`)}</h3>
          <ul>
            {lines
              .filter((line) => line.speaks === speaks)
              .map((line) => (
                <li key={line.says.key}>{tells.line(line)}</li>
              ))}
          </ul>
        </div>
      ))}
    </>
  );
}
