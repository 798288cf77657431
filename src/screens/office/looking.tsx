import { useEffect, useMemo, useRef, useState } from "preact/hooks";
import { pictureFacts, picturesToLookAt, type ToLookAt } from "../../job/index.ts";
import { makePictureSayer } from "../../record/index.ts";
import { speakingOf } from "../parts/job-now.ts";
import { JobPage, type JobTold } from "../parts/job-page.tsx";
import { Link } from "../parts/link.tsx";
import { screenAddress } from "../parts/pictures.ts";
import { jobPath } from "../parts/place.ts";
import { refusalText, useSpeaking } from "../parts/speaking.ts";
import { type Says, useLooks } from "./looks.ts";

/** Pictures that are fetched and decoded ahead of the one that is looked at. */
const AHEAD = 4;

const keys: readonly {
  readonly key: string;
  readonly says: Says;
  readonly word: "looking-shows" | "looking-does-not" | "looking-cannot";
}[] = [
  { key: "1", says: "shows it", word: "looking-shows" },
  { key: "2", says: "does not show it", word: "looking-does-not" },
  { key: "3", says: "cannot tell", word: "looking-cannot" },
];

/** Walks the pictures that hold a covering: one key each, and the next comes by itself. */
export const Looking = ({ job }: { readonly job: string }) => <JobPage job={job}>{(told) => <Walk job={job} told={told} />}</JobPage>;

interface WalkProps {
  readonly job: string;
  readonly told: JobTold;
}

function Walk({ job, told: { now, sayer } }: WalkProps) {
  const { say, session } = useSpeaking();
  const looks = useLooks(job);
  // the walk as it began: a picture that is read anew meanwhile does not shift the ones before it
  const walk = useRef<readonly ToLookAt[] | undefined>(undefined);
  walk.current ??= picturesToLookAt(now.state).filter(({ picture }) => now.view.photos[String(picture.what.photo)]?.state === "read");
  const all = walk.current;
  const [at, setAt] = useState(0);
  const here = all[at];

  useEffect(() => {
    const press = (event: KeyboardEvent): void => {
      if (event.ctrlKey || event.altKey || event.metaKey || event.repeat) return;
      const chosen = keys.find(({ key }) => key === event.key);
      if (chosen && here) take(chosen.says);
      if (event.key === "0" && at > 0) setAt(at - 1);
    };
    addEventListener("keydown", press);
    return () => removeEventListener("keydown", press);
  });

  function take(says: Says): void {
    if (here === undefined) return;
    looks.look(here.picture.id, says);
    setAt(at + 1);
  }

  return (
    <section class="looking">
      <h2>{say("looking")}</h2>
      <p role="status">
        {here === undefined ? say("looking-none") : say("looking-left", { count: all.length - at })}{" "}
        {looks.sending > 0 && say("looking-sending", { count: looks.sending })}
        {looks.waiting > 0 && say("looking-not-sent", { count: looks.waiting })}
        {looks.refused !== undefined && `${say("looking-refused")} ${refusalText(looks.refused, session)}`}
      </p>
      {here !== undefined && <p>{say("looking-keys")}</p>}
      <Mounts now={now} all={all} at={at} title={(one) => sayer.title(aboutOf(one))} />
      {here !== undefined && <Asked here={here} now={now} sayer={sayer} />}
      <div class="looking-keys">
        {here !== undefined &&
          keys.map(({ key, says, word }) => (
            <button key={key} type="button" class="target main" onClick={() => take(says)}>
              <kbd>{key}</kbd> {say(word)}
            </button>
          ))}
        {at > 0 && (
          <button type="button" class="target" onClick={() => setAt(at - 1)}>
            <kbd>0</kbd> {say("looking-before")}
          </button>
        )}
      </div>
      {here !== undefined && <Link to={jobPath(job, "beside", here.picture.id)}>{say("beside-open")}</Link>}
      <Link to={jobPath(job)}>{say("looking-to-job")}</Link>
    </section>
  );
}

const aboutOf = ({ instance: { item, tag } }: ToLookAt) => ({ item: item.id, ...(tag === undefined ? {} : { tag }) });

interface MountsProps {
  readonly now: JobTold["now"];
  readonly all: readonly ToLookAt[];
  readonly at: number;
  readonly title: (one: ToLookAt) => string;
}

/** The picture that is looked at, over those that come next: they are drawn already, beneath it, and only change places. */
function Mounts({ now, all, at, title }: MountsProps) {
  const shown = all.slice(at, at + 1 + AHEAD);
  if (shown.length === 0) return null;
  return (
    <div class="mounts">
      {shown.map((one, index) => (
        <img
          key={one.picture.id}
          class={index === 0 ? "mount now" : "mount next"}
          src={screenAddress(now, String(one.picture.what.photo))}
          alt={index === 0 ? title(one) : ""}
          aria-hidden={index > 0}
          decoding="sync"
        />
      ))}
    </div>
  );
}

/** What the picture is asked to show, what it holds, and what the ledger tells of it. */
function Asked({ here, now, sayer }: { readonly here: ToLookAt } & Pick<JobTold, "now" | "sayer">) {
  const { say, session } = useSpeaking();
  const { picture, instance, covering } = here;
  const tells = useMemo(
    () => makePictureSayer(speakingOf(now, session.language, session.units, say("someone"))),
    [now, session.language, session.units, say],
  );
  const lines = useMemo(() => pictureFacts(now.state, picture), [now.state, picture]);
  const act = sayer.words(now.state.sheet?.coverings.find(({ id }) => id === covering)?.title);
  const caption = typeof picture.what.caption === "string" ? picture.what.caption : "";
  return (
    <div class="asked-of-it">
      <h3>{sayer.title(aboutOf(here))}</h3>
      {instance.item.prompt !== undefined && <p>{sayer.words(instance.item.prompt)}</p>}
      {caption !== "" && <p>{caption}</p>}
      <p>{say("looking-holds", { act })}</p>
      <h4>{say("looking-tells")}</h4>
      <ul>
        {lines.map((line) => (
          <li key={line.says.key}>
            {tells.line(line)} ({tells.speaks(line.speaks)})
          </li>
        ))}
      </ul>
    </div>
  );
}
