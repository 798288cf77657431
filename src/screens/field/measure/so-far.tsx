import { type Live, photoComparisons } from "../../../job/index.ts";
import { Link } from "../../parts/link.tsx";
import { Section } from "../../parts/section.tsx";
import { useSpeaking } from "../../parts/speaking.ts";
import type { Taking } from "../job-part.ts";
import { movePath } from "../paths.ts";
import { useEnter } from "../use-enter.ts";
import { comparedSaid } from "./says.ts";

interface SoFarProps extends Pick<Taking, "job" | "told"> {
  readonly item: string;
  readonly tag: string | undefined;
}

/** What was measured in pictures beside this reading, compared with the tape, each with the ways to put it right. */
export function MeasuredSoFar({ job, told, item, tag }: SoFarProps) {
  const { say } = useSpeaking();
  const enter = useEnter(job);
  const { state } = told.now;
  const all = photoComparisons(state, "all").filter((one) => one.item === item && one.tag === tag);
  if (all.length === 0) return null;
  const takeBack = async ({ entry: { id, digest } }: Live): Promise<void> => {
    await enter("corrected", { what: { entry: { id, digest }, reason: say("measure-taken-back"), withdrawn: true } });
  };
  return (
    <Section title="measure-so-far">
      <ul class="measure-so-far">
        {[...all].reverse().map((one) => {
          const said = comparedSaid(one, told.sayer);
          const fact = state.facts.find(({ id }) => id === one.entry);
          return (
            <li key={one.entry} class={one.says === "disagree" ? "stands-out" : ""}>
              <p>
                {say(said.word, said.figures)}
                {said.because && ` ${say(said.because.word, said.because.figures)}`}
              </p>
              <div class="row-of-two">
                <button type="button" class="target" onClick={() => fact && void takeBack(fact)}>
                  {say("just-take-back")}
                </button>
                <Link to={movePath(job, one.entry)}>{say("reading-move")}</Link>
              </div>
            </li>
          );
        })}
      </ul>
    </Section>
  );
}
