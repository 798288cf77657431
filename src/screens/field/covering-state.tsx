import type { Clearance } from "../../job/index.ts";
import type { Sayer } from "../../record/index.ts";
import type { JobNow } from "../parts/job-now.ts";
import { shapeOfClearance } from "../parts/shapes.ts";
import { Sign } from "../parts/sign.tsx";
import { useSpeaking } from "../parts/speaking.ts";
import { counted } from "../parts/words/index.ts";

const stateWord = { clear: "clear-to", "on word": "clear-on-word", "not yet": "not-yet-act" } as const;

/** One open covering in a line: its sign, its state in words, what holds it, when it was announced. */
export function CoveringState({ clearance, now, sayer }: { readonly clearance: Clearance; readonly now: JobNow; readonly sayer: Sayer }) {
  const { say } = useSpeaking();
  const { covering, state, lines, announced } = clearance;
  const act = sayer.words(now.state.sheet?.coverings.find(({ id }) => id === covering)?.title) || covering;
  return (
    <p class={`says ${state.replace(" ", "-")}`}>
      <Sign shape={shapeOfClearance(state)} />
      <span>
        <b>{say(stateWord[state], { act })}</b>
        {state === "not yet" && lines.length > 0 && <span class="held">{counted(say, "held-by", lines.length)}</span>}
        {announced !== undefined && <span class="held">{say("announced-about", { time: sayer.moment(announced.about) })}</span>}
      </span>
    </p>
  );
}
