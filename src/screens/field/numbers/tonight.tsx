import { useCallback } from "preact/hooks";
import { leavingTonight, type NightLine } from "../../../job/index.ts";
import { jobPath } from "../../parts/place.ts";
import { Sign } from "../../parts/sign.tsx";
import { useSpeaking } from "../../parts/speaking.ts";
import { NotHere, PhoneFrame } from "../frame.tsx";
import type { JobPart } from "../job-part.ts";
import { useMinute } from "../minute.ts";
import { type ToldOnPhone, useTold } from "../told.ts";
import { Cautions } from "./cautions.tsx";
import { isSettled, shapeOfNight } from "./evening.ts";
import { MissingLinks } from "./missing-links.tsx";
import { NightWays } from "./night-ways.tsx";

const stateWord = {
  entered: "night-entered",
  missing: "night-missing",
  "not so": "night-not-so",
  "look again": "night-look-again",
  waits: "night-waits",
} as const;

/** One thing to look at: what is known of it, and what settles it, at once. */
function NightLineView({ job, line, since, told }: { job: string; line: NightLine; since: number; told: ToldOnPhone }) {
  const { say } = useSpeaking();
  const { about, state, says, missing } = line;
  return (
    <li class={`night-line ${isSettled(line) ? "" : "unsettled"}`}>
      <p class="says">
        <Sign shape={shapeOfNight(line)} quiet={state === "waits"} />
        <span>
          <b class="night-state">{say(stateWord[state])}</b> {told.sayer.ahead(says)}
        </span>
      </p>
      {about === "holes" || about === "pump" ? (
        <NightWays job={job} matter={about} since={since} told={told} />
      ) : (
        <MissingLinks job={job} missing={missing} told={told} />
      )}
    </li>
  );
}

/** Leaving tonight: what stands open, the pump, the water against what floats the basin, fresh glue. It calls nothing settled by itself. */
export function TonightPage({ job }: JobPart) {
  const { say } = useSpeaking();
  const told = useTold(job);
  const at = useMinute(useCallback(() => told?.book.findings.map(({ from }) => from) ?? [], [told?.book]));
  if (told === undefined) return <NotHere />;
  const { now, sayer } = told;
  const { sheet } = now.state;
  const { open, since, lines } = leavingTonight(now.state, at, now.findings);
  const asked = (sheet?.items ?? []).filter(({ tonight }) => tonight !== undefined);
  const steps = (sheet?.steps ?? []).filter(({ id }) => asked.some(({ step }) => step === id));
  const left = lines.filter((line) => !isSettled(line)).length;
  return (
    <PhoneFrame title={say("numbers-tonight")} back={{ to: jobPath(job), title: now.view.title }}>
      <p class="till" role="status">
        <b>{lines.length === 0 ? say("night-nothing") : left === 0 ? say("night-all-entered") : say("night-to-settle", { count: left })}</b>
      </p>
      <ul class="night-lines">
        {lines.map((line, i) => (
          <NightLineView key={`${line.about} ${i}`} job={job} line={line} since={since} told={told} />
        ))}
      </ul>
      {open.length > 0 && <p>{say("night-since", { time: sayer.moment(since) })}</p>}
      <p class="not-judged">{say("night-not-judged")}</p>
      <Cautions of={steps.flatMap(({ cautions }) => cautions)} told={told} />
    </PhoneFrame>
  );
}
