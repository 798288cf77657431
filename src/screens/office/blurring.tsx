import { useRef, useState } from "preact/hooks";
import { factsOf } from "../../job/index.ts";
import { MOST_REGIONS, type Region } from "../../photo/index.ts";
import type { BlurMade, WireProblem } from "../../wire/index.ts";
import { tell } from "../parts/edge.ts";
import { JobPage, type JobTold } from "../parts/job-page.tsx";
import { Link } from "../parts/link.tsx";
import { screenAddress } from "../parts/pictures.ts";
import { jobPath } from "../parts/place.ts";
import { refusalText, useSpeaking } from "../parts/speaking.ts";
import { type MarkedPart, partOf, regionOf } from "./marked-parts.ts";
import { MarkedPicture, PartFields } from "./marking.tsx";

type State =
  | { readonly is: "ready" | "incomplete" | "blurring" | "blurred" | "away" }
  | { readonly is: "refused"; readonly problem: WireProblem };

interface BlurringProps {
  readonly job: string;
  readonly photo: string;
}

/** Has parts of a picture blurred wherever it is shown: dragged over it, or given in numbers. */
export const Blurring = ({ job, photo }: BlurringProps) => (
  <JobPage job={job}>{(told) => <Marking job={job} photo={photo} told={told} />}</JobPage>
);

/** The parts that are blurred now, as the job's ledger names them; undefined where another job's does, or nobody knows. */
function blurredNow({ now: { view, state } }: JobTold, photo: string): readonly Region[] | undefined {
  const rendition = view.photos[photo]?.blurred;
  if (rendition === undefined) return [];
  return factsOf(state, "region-blurred").find(({ what }) => what.photo === photo && what.rendition === rendition)?.what.regions;
}

/** Where a part lies that is added without a drag, to be set right in its fields. */
const MIDDLE: Region = { x: 400_000, y: 400_000, width: 200_000, height: 200_000 };

function Marking({ job, photo, told }: BlurringProps & { readonly told: JobTold }) {
  const { say, session } = useSpeaking();
  const [known] = useState(() => blurredNow(told, photo));
  const [parts, setParts] = useState<readonly MarkedPart[]>(() => (known ?? []).map((region, key) => partOf(key, region)));
  const [state, setState] = useState<State>({ is: "ready" });
  const [made, setMade] = useState<string>();
  const lastKey = useRef(MOST_REGIONS);
  const adds = useRef<HTMLButtonElement>(null);
  const picture = told.pictures.find((one) => one.photo === photo && one.unseen === undefined);
  if (picture === undefined)
    return (
      <section class="blurring">
        <p>{say("blurring-unknown")}</p>
        <Link to={jobPath(job)}>{say("looking-to-job")}</Link>
      </section>
    );

  const busy = state.is === "blurring";
  const change = (next: readonly MarkedPart[]): void => {
    // what is being blurred is what was marked when it was sent
    if (busy) return;
    setParts(next);
    setState({ is: "ready" });
  };
  const add = (region: Region): void => {
    if (parts.length >= MOST_REGIONS) return;
    lastKey.current += 1;
    change([...parts, partOf(lastKey.current, region)]);
  };
  const submit = (event: SubmitEvent): void => {
    event.preventDefault();
    if (busy) return;
    const regions = parts.flatMap((part) => regionOf(part) ?? []);
    if (regions.length === 0 || regions.length < parts.length) {
      setState({ is: "incomplete" });
      return;
    }
    const reason = String(new FormData(event.currentTarget as HTMLFormElement).get("reason")).trim();
    setState({ is: "blurring" });
    void tell<BlurMade>(`/api/photos/${photo}/blurred`, { regions, reason }).then((answer) => {
      if (answer.is === "given") setMade(answer.value.parts);
      setState(answer.is === "given" ? { is: "blurred" } : answer);
    });
  };
  // the job is read again only some seconds later
  const address = made === undefined ? screenAddress(told.now, photo) : `/api/photos/${photo}/screen?parts=${made}`;
  return (
    <section class="blurring">
      <h2>{say("blurring-title")}</h2>
      <h3>{picture.title}</h3>
      <p>{say("blurring-how")}</p>
      {known === undefined && <p class="doubted">{say("blurring-elsewhere")}</p>}
      <MarkedPicture address={address} title={picture.title} parts={state.is === "blurred" ? [] : parts} onDragged={add} />
      <form class="issue" onSubmit={submit}>
        <p role="status">
          {parts.length === 0 ? say("blurring-none") : say("blurring-all", { count: parts.length })}{" "}
          {parts.length >= MOST_REGIONS && say("blurring-most", { count: MOST_REGIONS })}
        </p>
        {parts.map((part, index) => (
          <PartFields
            key={part.key}
            part={part}
            number={index + 1}
            onChange={(next) => change(parts.map((one) => (one.key === next.key ? next : one)))}
            onRemove={() => {
              change(parts.filter(({ key }) => key !== part.key));
              adds.current?.focus();
            }}
          />
        ))}
        <button ref={adds} type="button" class="target" aria-disabled={parts.length >= MOST_REGIONS} onClick={() => add(MIDDLE)}>
          {say("blurring-add")}
        </button>
        <label class="typed">
          {say("blurring-reason")}
          <input type="text" name="reason" required={true} maxLength={200} pattern=".*\S.*" autoComplete="off" />
        </label>
        <p>{say("blurring-records")}</p>
        <button type="submit" class="target main" aria-disabled={busy}>
          {say("blurring-do")}
        </button>
        <div role="status" class={["refused", "away", "incomplete"].includes(state.is) ? "answer refused" : "answer"}>
          {busy && <p>{say("blurring-doing")}</p>}
          {state.is === "blurred" && <p>{say("blurring-done")}</p>}
          {state.is === "incomplete" && <p>{say(parts.length === 0 ? "blurring-none" : "blurring-incomplete")}</p>}
          {state.is === "away" && <p>{say("blurring-away")}</p>}
          {state.is === "refused" && (
            <p>
              {say("blurring-refused")} {refusalText(state.problem, session)}
            </p>
          )}
        </div>
      </form>
      <Link to={jobPath(job)}>{say("looking-to-job")}</Link>
    </section>
  );
}
