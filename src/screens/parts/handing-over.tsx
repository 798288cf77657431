import type { BeforehandState, HandingOver, Line } from "../../job/index.ts";
import type { Sayer } from "../../record/index.ts";
import { behindOf, type JobNow } from "./job-now.ts";
import { Sign } from "./sign.tsx";
import { dayInWords, useSpeaking } from "./speaking.ts";
import { counted } from "./words/index.ts";

interface Told {
  readonly now: JobNow;
  readonly sayer: Sayer;
}

const keyOf = ({ about, step }: Line): string => `${step} ${about.check ?? ""} ${about.item ?? ""} ${about.tag ?? ""}`;

/** What is never called clear: everything entered, or how much is missing, and behind it what. */
function Entered({ state, missing, sayer }: Pick<BeforehandState, "state" | "missing"> & { readonly sayer: Sayer }) {
  const { say } = useSpeaking();
  if (state === "everything entered" || missing.length === 0)
    return (
      <p class="says">
        <Sign shape={state === "everything entered" ? "apart" : "missing"} />
        <span>{say(state === "everything entered" ? "everything-entered" : "missing-sheet")}</span>
      </p>
    );
  return (
    <details>
      <summary class="target">
        <Sign shape="missing" />
        <span>{counted(say, "missing", missing.length)}</span>
      </summary>
      <ul class="shown">
        {missing.map((line) => (
          <li key={keyOf(line)}>{sayer.line(line)}</li>
        ))}
      </ul>
    </details>
  );
}

/** What is due before something that is no covering, such as digging. */
export function BeforehandViews({ now, sayer }: Told) {
  const due = now.state.sheet?.beforehand ?? [];
  return (
    <>
      {now.beforehand.map(({ id, state, missing }) => (
        <section key={id} class="handing-over beforehand">
          <h2>{sayer.words(due.find((one) => one.id === id)?.title)}</h2>
          <Entered state={state} missing={missing} sayer={sayer} />
        </section>
      ))}
    </>
  );
}

function LeftToDo({ now, left }: { readonly now: JobNow; readonly left: HandingOver["leftToDo"] }) {
  const { say, session } = useSpeaking();
  const behind = behindOf(now, say("someone"));
  return (
    <ul class="shown">
      {left.map(({ entry, text, by, done }) => (
        <li key={entry}>
          {say("left-to-do-line", { text: text.replace(/\.\s*$/, ""), name: behind(entry).name, by: dayInWords(by, session.language) })}
          {done && ` (${say("left-to-do-done")})`}
        </li>
      ))}
    </ul>
  );
}

/** Handing over: everything entered, or how much is missing, and what is left to do, by whom and until when. */
export function HandingOverView({ now, sayer }: Told) {
  const { say } = useSpeaking();
  const { state, missing, leftToDo } = now.handingOver;
  return (
    <section class="handing-over">
      <h2>{say("handing-over")}</h2>
      <Entered state={state} missing={missing} sayer={sayer} />
      <h3>{say("left-to-do")}</h3>
      {leftToDo.length === 0 ? <p>{say("left-to-do-none")}</p> : <LeftToDo now={now} left={leftToDo} />}
    </section>
  );
}
