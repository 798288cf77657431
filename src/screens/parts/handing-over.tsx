import type { Sayer } from "../../record/index.ts";
import type { JobNow } from "./job-now.ts";
import { Sign } from "./sign.tsx";
import { useSpeaking } from "./speaking.ts";
import { counted } from "./words/index.ts";

/** Handing over is never called clear: everything entered, or how much is missing, and what is left to do. */
export function HandingOverView({ now, sayer }: { readonly now: JobNow; readonly sayer: Sayer }) {
  const { say } = useSpeaking();
  const { state, missing, leftToDo } = now.handingOver;
  return (
    <section class="handing-over">
      <h2>{say("handing-over")}</h2>
      <details>
        <summary class="target">
          <Sign shape={state === "everything entered" ? "apart" : "missing"} />
          <span>{state === "everything entered" ? say("everything-entered") : counted(say, "missing", missing.length)}</span>
        </summary>
        <ul class="shown">
          {missing.map((line) => (
            <li key={`${line.about.check ?? ""} ${line.about.item ?? ""} ${line.about.tag ?? ""}`}>{sayer.line(line)}</li>
          ))}
        </ul>
      </details>
      <h3>{say("left-to-do")}</h3>
      {leftToDo.length === 0 ? (
        <p>{say("left-to-do-none")}</p>
      ) : (
        <ul class="shown">
          {leftToDo.map(({ entry, text, by, done }) => (
            <li key={entry}>
              {text}, {say("left-to-do-by", { by })}
              {done && ` (${say("left-to-do-done")})`}
            </li>
          ))}
        </ul>
      )}
    </section>
  );
}
