import { useState } from "preact/hooks";
import type { LaidAside, TriedAgain, WireProblem } from "../../wire/index.ts";
import { tell } from "../parts/edge.ts";
import { Frame } from "../parts/frame.tsx";
import { useJobs } from "../parts/job-list.tsx";
import { Link } from "../parts/link.tsx";
import { jobPath } from "../parts/place.ts";
import { momentHere, refusalText, useSpeaking } from "../parts/speaking.ts";
import type { ScreenWord } from "../parts/words/index.ts";
import { useLaidAside } from "./laid-aside-known.tsx";

type State =
  | { readonly is: "ready" | "asking" | "away" }
  | { readonly is: "asked"; readonly count: number }
  | { readonly is: "refused"; readonly problem: WireProblem };

const reasons = ["media-unavailable", "store-unavailable", "photo-unknown", "photo-hash-differs", "broke"] as const;

/** What the program could not do with pictures that came in: seen here, and tried again when somebody says so. */
export function LaidAsidePage() {
  const { say, session } = useSpeaking();
  const news = useLaidAside();
  const [state, setState] = useState<State>({ is: "ready" });
  const { work = [], more = 0 } = news.value ?? {};
  const again = (some?: LaidAside): void => {
    if (state.is === "asking") return;
    setState({ is: "asking" });
    const { kind, photo, job } = some ?? {};
    const body = some === undefined ? {} : { work: [{ kind, photo, ...(job === undefined ? {} : { job }) }] };
    void tell<TriedAgain>("/api/laid-aside/again", body).then((answer) => {
      setState(answer.is === "given" ? { is: "asked", count: answer.value.again } : answer);
      news.again();
    });
  };
  return (
    <Frame title={say("laid-aside-title")} news={news} inside={true}>
      <p>{say("laid-aside-how")}</p>
      {news.value !== undefined && work.length === 0 && <p>{say("laid-aside-none")}</p>}
      {work.length > 0 && (
        <button type="button" class="target main" aria-disabled={state.is === "asking"} onClick={() => again()}>
          {say("laid-aside-again-all")}
        </button>
      )}
      <div role="status" class={["refused", "away"].includes(state.is) ? "answer refused" : "answer"}>
        {state.is === "asked" && <p>{say("laid-aside-asked", { count: state.count })}</p>}
        {state.is === "away" && <p>{say("after-away")}</p>}
        {state.is === "refused" && <p>{refusalText(state.problem, session)}</p>}
      </div>
      {work.map((one) => (
        <Piece key={`${one.kind} ${one.job} ${one.photo}`} work={one} again={() => again(one)} />
      ))}
      {more > 0 && <p>{say("laid-aside-more", { count: more })}</p>}
    </Frame>
  );
}

function Piece({
  work: { kind, photo, job, tries, why, next, laidAside },
  again,
}: {
  readonly work: LaidAside;
  readonly again: () => void;
}) {
  const { say, session } = useSpeaking();
  const jobs = useJobs().value ?? [];
  const known = reasons.find((one) => one === why);
  const reason: ScreenWord = known ? `laid-aside-why-${known}` : why === null ? "laid-aside-why-unknown" : "laid-aside-why-other";
  const when = momentHere(next, session.language);
  return (
    <article class="site-change">
      <h2>{say(`laid-aside-${kind}`)}</h2>
      <p>
        <a class="target" href={`/api/photos/${photo}/original`} target="_blank" rel="noreferrer">
          {say("laid-aside-photo", { photo: photo.slice(0, 8) })}
        </a>{" "}
        {job !== undefined && <Link to={jobPath(job)}>{jobs.find((one) => one.job === job)?.title ?? job}</Link>}
      </p>
      <p>{say(reason, { why: why ?? "" })}</p>
      <p>{say(laidAside ? "laid-aside-daily" : "laid-aside-tries", { count: tries, when })}</p>
      <button type="button" class="target" onClick={again}>
        {say("laid-aside-again")}
      </button>
    </article>
  );
}
