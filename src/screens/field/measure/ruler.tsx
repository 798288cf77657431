import { useState } from "preact/hooks";
import type { Typed } from "../../../job/index.ts";
import type { CardPaper } from "../../../photo/index.ts";
import { useSpeaking } from "../../parts/speaking.ts";
import { useKeep } from "../keep/index.ts";
import type { ToldOnPhone } from "../told.ts";
import { drawnRuler, keepRuler, rulerTyped } from "./ruler-kept.ts";
import { lengthText } from "./says.ts";

interface RulerProps {
  readonly paper: CardPaper;
  readonly kept: Typed | undefined;
  readonly sayer: ToldOnPhone["sayer"];
  readonly onKept: (ruler: Typed) => void;
}

/** What a tape says beside the card's ruler: asked once for each paper, opened by itself while it is not known. */
export function Ruler({ paper, kept, sayer, onKept }: RulerProps) {
  const { say, session } = useSpeaking();
  const { keep } = useKeep();
  const [typed, setTyped] = useState("");
  const [refused, setRefused] = useState("");
  const unit = session.units === "inch" ? "in" : "mm";
  const drawn = lengthText(sayer, drawnRuler(paper));
  const name = say(`measure-paper-${paper}`);
  const enter = async (event: SubmitEvent): Promise<void> => {
    event.preventDefault();
    const read = rulerTyped(paper, typed, unit);
    if (read === "coarse") return setRefused(say("measure-ruler-marks"));
    if (!read.ok)
      return setRefused(read.refusal.code === "reading-out-of-range" ? say("measure-ruler-other", { drawn }) : sayer.refusal(read.refusal));
    await keepRuler(keep, paper, read.value);
    setRefused("");
    setTyped("");
    onKept(read.value);
  };
  return (
    <details class="measure-ruler" open={kept === undefined}>
      <summary class="target">{say("measure-ruler")}</summary>
      <form onSubmit={(event) => void enter(event)}>
        {kept !== undefined && (
          <p role="status">{say("measure-ruler-kept", { paper: name, typed: `${kept.typed} ${bare(kept)}`.trim() })}</p>
        )}
        <p>{say("measure-ruler-how", { drawn })}</p>
        <label class="typed">
          {say("measure-ruler-typed", { unit })}
          <input type="text" autoComplete="off" value={typed} onInput={(event) => setTyped(event.currentTarget.value)} />
        </label>
        <p role="alert">{refused}</p>
        <button type="submit" class="target">
          {say("measure-ruler-keep")}
        </button>
      </form>
    </details>
  );
}

/** The unit, where the text has none of its own. */
const bare = ({ typed, unit }: Typed): string => (/[a-z"'″′]/i.test(typed) ? "" : unit);
