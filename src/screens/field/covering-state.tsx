import { momentText } from "../../record/index.ts";
import { shapeOfClearance } from "../parts/shapes.ts";
import { Sign } from "../parts/sign.tsx";
import { useSpeaking } from "../parts/speaking.ts";
import { counted } from "../parts/words/index.ts";
import type { GlanceLine } from "./keep/index.ts";

const stateWord = { clear: "clear-to", "on word": "clear-on-word", "not yet": "not-yet-act" } as const;

/** One open covering in a line: its sign, its state in words, what holds it, when it was announced. `zone`: the site's. */
export function CoveringState({ line, zone }: { readonly line: GlanceLine; readonly zone: string }) {
  const { say, session } = useSpeaking();
  const { covering, act: words, state, held, about } = line;
  const act = (words?.[session.language] ?? words?.en) || covering;
  return (
    <p class={`says ${state.replace(" ", "-")}`}>
      <Sign shape={shapeOfClearance(state)} />
      <span>
        <b>{say(stateWord[state], { act })}</b>
        {state === "not yet" && held > 0 && <span class="held">{counted(say, "held-by", held)}</span>}
        {about !== undefined && <span class="held">{say("announced-about", { time: momentText(about, zone, session.language) })}</span>}
      </span>
    </p>
  );
}
