import { useCallback } from "preact/hooks";
import { itemNamed, tagSetOf, type Wait, type WaitLine, waterWhen } from "../../../job/index.ts";
import { Link } from "../../parts/link.tsx";
import { jobPath } from "../../parts/place.ts";
import { Section } from "../../parts/section.tsx";
import { Sign } from "../../parts/sign.tsx";
import { useSpeaking } from "../../parts/speaking.ts";
import { NotHere, PhoneFrame } from "../frame.tsx";
import type { JobPart } from "../job-part.ts";
import { useMinute } from "../minute.ts";
import { namesPath } from "../paths.ts";
import { type ToldOnPhone, useTold } from "../told.ts";
import { Cautions, cautionsOfItems } from "./cautions.tsx";
import { MissingLinks } from "./missing-links.tsx";
import { OfficeCall } from "./office-call.tsx";
import { RunAt } from "./run-at.tsx";
import { isOfGlue, leftOf, releasesWater } from "./waits.ts";

interface OfJob {
  readonly job: string;
  readonly told: ToldOnPhone;
  /** The edge's clock, ms. */
  readonly at: number;
}

/** What is left of one wait in large type, and its sentence. */
function Countdown({ wait, title, sentence, told, at }: Omit<OfJob, "job"> & { wait: Wait; title: string; sentence: string }) {
  const { say } = useSpeaking();
  const left = leftOf(wait, at);
  return (
    <div class="countdown">
      <p class="says">
        <Sign shape={left === undefined ? "missing" : left === 0 ? "within" : "outside"} quiet={left !== 0} />
        <span>
          {title}{" "}
          <b class="left">
            {left === undefined ? say("till-not-known") : left === 0 ? say("till-over") : told.sayer.quantity("duration", left)}
          </b>
        </span>
      </p>
      <p>{sentence}</p>
    </div>
  );
}

function Waiting({ line, decides, ...of }: OfJob & { readonly line: WaitLine; readonly decides: boolean }) {
  const { say } = useSpeaking();
  const { job, told, at } = of;
  const { name, set, water, says } = line;
  const sentences = says.map(told.sayer.ahead);
  const missing = [...new Map([...(set?.missing ?? []), ...water.missing].map((about) => [JSON.stringify(about), about])).values()];
  return (
    <li class={`waiting ${decides ? "decides" : ""}`}>
      <h3>{told.sayer.words(name)}</h3>
      {decides && <p class="longest">{say("till-decides")}</p>}
      {set !== undefined && <Countdown wait={set} title={say("till-set")} sentence={sentences[0] ?? ""} told={told} at={at} />}
      <Countdown wait={water} title={say("till-water")} sentence={sentences.at(-1) ?? ""} told={told} at={at} />
      <MissingLinks job={job} missing={missing} told={told} />
      <OfficeCall figures={[...(set?.unknown ?? []), ...water.unknown]} told={told} />
    </li>
  );
}

/** Whatever makes water wait can be named from here: a glue session, something with a label. */
function NameNext({ job, told: { now, sayer } }: Omit<OfJob, "at">) {
  const { say } = useSpeaking();
  const { sheet } = now.state;
  const sets = new Set((sheet?.checks ?? []).filter(releasesWater).flatMap((check) => tagSetOf(sheet?.items ?? [], check) ?? []));
  return (
    <ul class="choices">
      {[...sets].map((set) => (
        <li key={set}>
          <Link to={namesPath(job, set)}>
            {say("till-name-next", { set: sayer.words(sheet?.tagSets.find(({ id }) => id === set)?.title) })}
          </Link>
        </li>
      ))}
    </ul>
  );
}

/** How long till water: what is left of every set and cure time and of every label's, and by when to glue. It knows of times alone. */
export function WaterPage({ job }: JobPart) {
  const { say } = useSpeaking();
  const told = useTold(job);
  const at = useMinute(useCallback(() => told?.book.findings.map(({ from }) => from) ?? [], [told?.book]));
  if (told === undefined) return <NotHere />;
  const { now, sayer } = told;
  const { sheet } = now.state;
  const when = waterWhen(now.state, at, now.findings);
  const left = leftOf(when, at);
  // of gluing always: that is what this page is opened for
  const waiting = new Set(when.lines.map(({ water }) => water.check));
  const items = (sheet?.checks ?? [])
    .filter((check) => releasesWater(check) && (waiting.has(check.id) || isOfGlue(check)))
    .flatMap((check) => [{ step: check.step }, ...check.items.flatMap((id) => (sheet && itemNamed(sheet, id)) ?? [])]);
  return (
    <PhoneFrame title={say("numbers-water")} back={{ to: jobPath(job), title: now.view.title }}>
      <div class={`till ${left === 0 ? "over" : "waits"}`} role="status">
        {left !== undefined && left > 0 && (
          <p>
            {say("till-no-water-for")} <b class="left">{sayer.quantity("duration", left)}</b>
          </p>
        )}
        <p>{sayer.ahead(when.says)}</p>
      </div>
      <p class="not-judged">{say("till-times-alone")}</p>
      {when.lines.length > 0 && (
        <Section title="till-each">
          <ul class="waitings">
            {when.lines.map((line) => (
              <Waiting
                key={`${line.water.check} ${line.tag ?? ""}`}
                line={line}
                decides={line === when.decides && !when.passed}
                job={job}
                told={told}
                at={at}
              />
            ))}
          </ul>
        </Section>
      )}
      <RunAt job={job} told={told} at={at} />
      <NameNext job={job} told={told} />
      <Cautions of={cautionsOfItems(told, items)} told={told} />
    </PhoneFrame>
  );
}
