import type { Clearance, Finding, Line } from "../../job/index.ts";
import type { Sayer } from "../../record/index.ts";
import { findingBehind } from "./counts.ts";
import { coveredWord } from "./covered-word.ts";
import type { JobNow } from "./job-now.ts";
import { shapeOfClearance, shapeOfCovered, shapeOfVerdict } from "./shapes.ts";
import { GroundCut, Sign } from "./sign.tsx";
import { useSpeaking } from "./speaking.ts";

/** As many lines as are read at the edge of a hole. */
export const MOST_LINES = 3;

interface Told {
  readonly now: JobNow;
  readonly sayer: Sayer;
}

/** A measured value says more than its verdict alone; what is merely not there has nothing more to say. */
function sentenceOf(line: Line, findings: readonly Finding[], sayer: Sayer): string {
  const finding = findingBehind(findings, line.about);
  return finding === undefined || line.verdict === "not taken" || line.from !== undefined ? sayer.line(line) : sayer.finding(finding);
}

function LineView({ line, now, sayer }: Told & { readonly line: Line }) {
  const { say } = useSpeaking();
  return (
    <li>
      <p class="says">
        <Sign shape={line.from === undefined ? shapeOfVerdict(line.verdict) : "missing"} />
        <span>{sentenceOf(line, now.findings, sayer)}</span>
      </p>
      <p class="ways">
        {say("ways-out")}: {line.waysOut.map(sayer.wayOut).join(", ")}
      </p>
    </li>
  );
}

/** What holds a covering: three lines, the rest behind 'and n more'. */
export function Lines({ lines, now, sayer }: Told & { readonly lines: readonly Line[] }) {
  const { say } = useSpeaking();
  const [first, rest] = [lines.slice(0, MOST_LINES), lines.slice(MOST_LINES)];
  const list = (some: readonly Line[]) => (
    <ol class="lines">
      {some.map((line) => (
        <LineView key={`${line.about.check ?? ""} ${line.about.item ?? ""} ${line.about.tag ?? ""}`} line={line} now={now} sayer={sayer} />
      ))}
    </ol>
  );
  return (
    <>
      {first.length > 0 && list(first)}
      {rest.length > 0 && (
        <details class="more">
          <summary class="target">{say("and-more", { count: rest.length })}</summary>
          {list(rest)}
        </details>
      )}
    </>
  );
}

const actOf = (clearance: Clearance, { now, sayer }: Told): string =>
  sayer.words(now.state.sheet?.coverings.find(({ id }) => id === clearance.covering)?.title);

/** A covering that is still open: its clearance, what holds it with the ways out, and its cautions. */
export function OpenCovering({ clearance, now, sayer }: Told & { readonly clearance: Clearance }) {
  const { say } = useSpeaking();
  const covering = now.state.sheet?.coverings.find(({ id }) => id === clearance.covering);
  const cautions = (covering?.cautions ?? []).map((id) =>
    sayer.words(now.state.sheet?.cautions.find((caution) => caution.id === id)?.text),
  );
  return (
    <article class={`covering ${clearance.state.replace(" ", "-")}`}>
      <GroundCut filled={false} />
      <h3>{actOf(clearance, { now, sayer })}</h3>
      <p class="clearance">
        <Sign shape={shapeOfClearance(clearance.state)} />
        <strong>{sayer.clearance(clearance)}</strong>
      </p>
      <Lines lines={clearance.lines} now={now} sayer={sayer} />
      {cautions.length > 0 && (
        <div class="cautions">
          <h4>{say("before-covering")}</h4>
          {cautions.map((caution) => (
            <p key={caution}>{caution}</p>
          ))}
        </div>
      )}
    </article>
  );
}

/** A covering that has happened: when, on what clearance, and what is known now. */
export function DoneCovering({ clearance, now, sayer }: Told & { readonly clearance: Clearance }) {
  const { say } = useSpeaking();
  const { covered } = clearance;
  const covering = now.state.sheet?.coverings.find(({ id }) => id === clearance.covering);
  if (covered === undefined) return null;
  const notYet = covered.shown === "not yet";
  const shown = covered.beforeRecord ? "before record" : covered.shown;
  return (
    <article class="covering done">
      <GroundCut filled={true} />
      <h3>{sayer.words(covering?.done)}</h3>
      <p class="says">
        <Sign shape={shapeOfCovered(covered)} />
        <span>
          {say(coveredWord(covered), { time: sayer.moment(covered.at) })}. {shown === undefined && say("covered-shown-none")}
          {shown === "clear" && say("covered-shown-clear")}
          {shown === "on word" && say("covered-shown-on-word")}
          {shown === "not yet" && say("covered-shown-not-yet")}
        </span>
      </p>
      {notYet && (
        <ul class="shown">
          {(covered.shownLines ?? []).map((line) => (
            <li key={line}>{line}</li>
          ))}
        </ul>
      )}
      {covered.laterDoubted && <p class="doubted">{say("covered-later-doubted")}</p>}
    </article>
  );
}

/** What stands where nothing is open. */
export function NothingOpen() {
  const { say } = useSpeaking();
  return <p>{say("open-in-the-ground-none")}</p>;
}
