import type { Words } from "../../job/index.ts";
import type { JobList } from "../../wire/index.ts";
import { ask } from "./edge.ts";
import { type News, useNews } from "./news.ts";
import type { ListedCovering, ListedJob } from "./order.ts";
import { shapeOfClearance } from "./shapes.ts";
import { Sign } from "./sign.tsx";
import { momentHere, useSpeaking } from "./speaking.ts";
import { counted } from "./words/index.ts";

/** The company's jobs, kept fresh. */
export const useJobs = (): News<readonly ListedJob[]> =>
  useNews("jobs", async () => {
    const answer = await ask<JobList>("/api/jobs");
    return answer.is === "given" ? { is: "given", value: answer.value.jobs } : answer;
  });

const stateWord = { clear: "clear-to", "on word": "clear-on-word", "not yet": "not-yet-act" } as const;

/** The act of a covering in the reader's language, as the list carries it. */
export const actIn = (covering: ListedCovering, language: "en" | "es"): string => {
  const title = covering.title as unknown as Words | null;
  return title?.[language] ?? title?.en ?? covering.covering;
};

/** One covering of the list in a line: its sign, its state in words, what holds it, when it was announced. */
export function CoveringLine({ covering }: { readonly covering: ListedCovering }) {
  const { say, session } = useSpeaking();
  const act = actIn(covering, session.language);
  if (covering.done)
    return (
      <p class="says">
        <Sign shape="apart" />
        <span>
          {act}: {say("covered").toLowerCase()}
        </span>
      </p>
    );
  return (
    <p class={`says ${covering.state.replace(" ", "-")}`}>
      <Sign shape={shapeOfClearance(covering.state)} />
      <span>
        <b>{say(stateWord[covering.state], { act })}</b>
        {covering.state === "not yet" && covering.lines > 0 && <span class="held">{counted(say, "held-by", covering.lines)}</span>}
        {covering.about !== undefined && (
          <span class="held">{say("announced-about", { time: momentHere(covering.about, session.language) })}</span>
        )}
      </span>
    </p>
  );
}
