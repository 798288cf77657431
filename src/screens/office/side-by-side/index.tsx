import { useRef, useState } from "preact/hooks";
import { JobPage, type JobTold } from "../../parts/job-page.tsx";
import { Link } from "../../parts/link.tsx";
import { jobPath } from "../../parts/place.ts";
import { useSpeaking } from "../../parts/speaking.ts";
import { useSeenBefore } from "../seen-before-known.tsx";
import { besides } from "./choices.ts";
import { byKey, type Near, nearer, whole } from "./near.ts";
import { Side } from "./side.tsx";

/** A picture of a job beside another one, both enlarged and moved as one, with what speaks for and against each. */
export const SideBySide = ({ job, entry }: { readonly job: string; readonly entry: string }) => (
  <JobPage job={job}>{(told) => <Two job={job} entry={entry} told={told} />}</JobPage>
);

interface TwoProps {
  readonly job: string;
  readonly entry: string;
  readonly told: JobTold;
}

function Two({ job, entry, told }: TwoProps) {
  const { say } = useSpeaking();
  const seen = useSeenBefore(job);
  const [near, setNear] = useState<Near>(whole);
  const [chosen, setChosen] = useState<string>();
  const stands = useRef<string | undefined>(undefined);
  const first = told.pictures.find((picture) => picture.entry === entry && picture.unseen === undefined);
  if (first === undefined)
    return (
      <section>
        <p>{say("beside-none")}</p>
        <Link to={jobPath(job)}>{say("looking-to-job")}</Link>
      </section>
    );
  const choices = besides(told, first, seen.value?.seenBefore ?? []);
  // what shows the same stands beside it first, and is known a moment later; once something stands there, nothing takes its place by itself
  const known = seen.value !== undefined || seen.problem !== undefined || seen.awaySince !== undefined;
  if (known) stands.current ??= choices[0]?.key;
  const second = known ? (choices.find(({ key }) => key === (chosen ?? stands.current)) ?? choices[0]) : undefined;
  const groups = [...new Set(choices.map(({ why }) => why))];
  const pressed = (event: KeyboardEvent): void => {
    if (event.ctrlKey || event.altKey || event.metaKey || event.target instanceof HTMLSelectElement) return;
    const next = byKey(near, event.key);
    if (next === undefined) return;
    event.preventDefault();
    setNear(next);
  };
  return (
    // biome-ignore lint/a11y/noStaticElementInteractions: keys work wherever inside the focus is; each has its button too
    <section class="side-by-side" onKeyDown={pressed}>
      <h2>{say("beside-title")}</h2>
      <p>{say("beside-how")}</p>
      <label class="typed">
        {say("beside-which")}
        <select class="target" value={second?.key} onChange={(event) => setChosen(event.currentTarget.value)}>
          {groups.map((why) => (
            <optgroup key={why} label={say(why)}>
              {choices
                .filter((choice) => choice.why === why)
                .map(({ key, title }) => (
                  <option key={key} value={key}>
                    {title}
                  </option>
                ))}
            </optgroup>
          ))}
        </select>
      </label>
      <p class="looking-keys">
        <button type="button" class="target" onClick={() => setNear(nearer(near, 1.5))}>
          <kbd>+</kbd> {say("beside-nearer")}
        </button>
        <button type="button" class="target" onClick={() => setNear(nearer(near, 1 / 1.5))}>
          <kbd>−</kbd> {say("beside-farther")}
        </button>
        <button type="button" class="target" onClick={() => setNear(whole)}>
          <kbd>0</kbd> {say("beside-whole")}
        </button>
      </p>
      <div class="two-frames">
        <Side told={told} picture={first} title={first.title} address={first.address} near={near} change={setNear} />
        {second === undefined ? (
          <p role="status">{say(known ? "beside-alone" : "reading-first")}</p>
        ) : (
          <Side
            key={second.key}
            told={told}
            title={second.picture?.title ?? say("beside-why-elsewhere")}
            address={second.address}
            near={near}
            change={setNear}
            {...(second.picture && { picture: second.picture })}
            {...(second.jobs && { jobs: second.jobs })}
          />
        )}
      </div>
      <Link to={jobPath(job)}>{say("looking-to-job")}</Link>
    </section>
  );
}
