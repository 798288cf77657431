import type { Covering } from "../../../job/index.ts";
import { Link } from "../../parts/link.tsx";
import { useSpeaking } from "../../parts/speaking.ts";
import type { Say } from "../../parts/words/index.ts";
import { coverPath, namesPath, stepPath } from "../paths.ts";
import type { ToldOnPhone } from "../told.ts";
import { firstOpen, type NextOpen, nextStep, titleOfNext, unnamedIn } from "./next-open.ts";

interface StepGoesOnProps {
  readonly job: string;
  readonly step: string;
  readonly tag: string | undefined;
  readonly told: ToldOnPhone;
}

/** Where a step goes on, under the thumb: what is to be named, what is open in it, the covering that is clear now, then the next step. */
export function StepGoesOn({ job, step, tag, told }: StepGoesOnProps) {
  const { say } = useSpeaking();
  const to = goesOn({ job, step, tag, told }, say);
  if (to === undefined) return null;
  return (
    <div class="shutter-row alone">
      <Link to={to.path} class="target main">
        {to.words}
      </Link>
    </div>
  );
}

interface GoesOn {
  readonly path: string;
  readonly words: string;
}

function goesOn({ job, step, tag, told }: StepGoesOnProps, say: Say): GoesOn | undefined {
  const { sayer, now } = told;
  const nextThing = (open: NextOpen): GoesOn => ({ path: open.path, words: say("reading-next", { title: titleOfNext(open, told, say) }) });
  const own = tag === undefined ? undefined : firstOpen(told, job, step, tag);
  if (own !== undefined) return nextThing(own);
  const set = unnamedIn(told, step);
  if (set !== undefined) return { path: namesPath(job, set.id, step), words: say("step-names", { title: sayer.words(set.title) }) };
  const open = firstOpen(told, job, step);
  if (open !== undefined) return nextThing(open);
  const clear = clearedBy(told, step);
  if (clear !== undefined) return { path: coverPath(job, clear.id), words: say("step-cover", { act: sayer.words(clear.title) }) };
  const following = now.state.sheet?.steps.find(({ id }) => id === nextStep(told, step));
  if (following === undefined) return undefined;
  return { path: stepPath(job, following.id), words: say("step-next", { number: following.number, title: sayer.words(following.title) }) };
}

/** A covering that is clear and not done, and that something of this step held. */
function clearedBy({ now }: ToldOnPhone, step: string): Covering | undefined {
  const held = new Set(now.findings.filter((finding) => finding.step === step).map(({ holds }) => holds));
  const clear = now.clearances.find(({ covering, state, covered }) => held.has(covering) && state !== "not yet" && covered === undefined);
  return now.state.sheet?.coverings.find(({ id }) => id === clear?.covering);
}
