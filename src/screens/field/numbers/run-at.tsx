import { useState } from "preact/hooks";
import { type GlueBefore, glueBefore } from "../../../job/index.ts";
import { Section } from "../../parts/section.tsx";
import { Sign } from "../../parts/sign.tsx";
import { useSpeaking } from "../../parts/speaking.ts";
import type { ToldOnPhone } from "../told.ts";
import { MeantSession } from "./meant-session.tsx";
import { MissingLinks } from "./missing-links.tsx";
import { OfficeCall } from "./office-call.tsx";
import { type Meant, sessionOf } from "./session-meant.ts";
import { clockAt, HALF_HOUR_MS, halfHourFrom } from "./site-time.ts";

const HOURS_AHEAD = 6;

interface OfJob {
  readonly job: string;
  readonly told: ToldOnPhone;
  readonly at: number;
}

/** By when one session must be glued, in large type. */
function Before({ line, job, told, at }: OfJob & { readonly line: GlueBefore }) {
  const { say, session } = useSpeaking();
  const { sayer, now } = told;
  const { before, takes = 0, missing, unknown, refusal, says } = line;
  const clock = (instant: number): string => clockAt(instant, at, now.state.opened?.zone ?? "UTC", session.language);
  const isLate = before !== undefined && before < at;
  return (
    <li class="glue-before">
      {before !== undefined && !isLate && (
        <p>
          {say("run-glue-before")} <b class="left">{clock(before)}</b>
        </p>
      )}
      {isLate && (
        <p class="says">
          <Sign shape="outside" />
          <b>{say("run-too-late", { time: clock(at + takes) })}</b>
        </p>
      )}
      {!isLate && <p>{sayer.ahead(says)}</p>}
      {refusal !== undefined && <p>{sayer.refusal(refusal)}</p>}
      <MissingLinks job={job} missing={missing} told={told} />
      <OfficeCall figures={unknown} told={told} />
    </li>
  );
}

/** 'Glue it before four and you can run it at seven': the wished time is chosen, by when to glue stands below. */
export function RunAt({ job, told, at }: OfJob) {
  const { say, session } = useSpeaking();
  const [wished, setWished] = useState(() => halfHourFrom(at + HOURS_AHEAD * 2 * HALF_HOUR_MS));
  const [meant, setMeant] = useState<Meant>({ coldest: "", can: "" });
  const { state } = told.now;
  const runAt = Math.max(wished, halfHourFrom(at));
  const named = glueBefore(state, runAt);
  const typed = sessionOf(meant, session.units);
  const own = typed === undefined ? [] : glueBefore(state, runAt, typed);
  const by = (halfHours: number): void => setWished(Math.max(halfHourFrom(at), runAt + halfHours * HALF_HOUR_MS));
  return (
    <Section title="run-when" look="run-at">
      <div class="tape-by">
        <button type="button" class="target" aria-label={say("run-earlier")} onClick={() => by(-1)}>
          −
        </button>
        <output class="tape-value">{clockAt(runAt, at, state.opened?.zone ?? "UTC", session.language)}</output>
        <button type="button" class="target" aria-label={say("run-later")} onClick={() => by(1)}>
          +
        </button>
      </div>
      <ul class="glue-befores" aria-live="polite">
        {named.map((line) => (
          <Before key={line.tag} line={line} job={job} told={told} at={at} />
        ))}
        {own.map((line) => (
          <Before key="meant" line={line} job={job} told={told} at={at} />
        ))}
      </ul>
      <MeantSession meant={meant} onChange={setMeant} />
    </Section>
  );
}
