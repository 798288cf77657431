import { Link } from "../../parts/link.tsx";
import { jobPath } from "../../parts/place.ts";
import { useSpeaking } from "../../parts/speaking.ts";
import { NotHere, PhoneFrame } from "../frame.tsx";
import type { JobPart } from "../job-part.ts";
import { namesPath, stepPath } from "../paths.ts";
import { type ToldOnPhone, useTold } from "../told.ts";
import { JustEntered } from "./just-entered.tsx";
import { askedIn } from "./next-open.ts";
import { StepGoesOn } from "./step-goes-on.tsx";
import { Found, Rows } from "./step-rows.tsx";

interface NamesProps {
  readonly job: string;
  readonly step: string;
  readonly told: ToldOnPhone;
}

/** Of the things that repeat under this name: the way to name the next of the kind. Two kinds may both have an A. */
function NameNext({ job, step, tag, told: { now, sayer } }: NamesProps & { readonly tag: string }) {
  const { say } = useSpeaking();
  const here = new Set((now.state.sheet?.items ?? []).filter((item) => item.step === step).map(({ tags }) => tags));
  const own = new Set(now.state.tags.filter((one) => here.has(one.set) && one.tag === tag).map(({ set }) => set));
  return (
    <ul class="choices">
      {(now.state.sheet?.tagSets ?? [])
        .filter(({ id }) => own.has(id))
        .map(({ id, title }) => (
          <li key={id}>
            <Link to={namesPath(job, id, step)}>
              {sayer.words(title)}: {say("name-next")}
            </Link>
          </li>
        ))}
    </ul>
  );
}

/** The names under which a step's things repeat, and the way to the next one. */
function Names({ job, step, told }: NamesProps) {
  const { say } = useSpeaking();
  const { state } = told.now;
  const sets = [...new Set((state.sheet?.items ?? []).filter((item) => item.step === step).flatMap(({ tags }) => tags ?? []))];
  return (
    <>
      {sets.map((set) => (
        <section key={set}>
          <h2>{told.sayer.words(state.sheet?.tagSets.find(({ id }) => id === set)?.title)}</h2>
          <ul class="choices">
            {state.tags
              .filter((one) => one.set === set)
              .map(({ tag, description }) => (
                <li key={tag}>
                  <Link to={stepPath(job, step, tag)}>{description === undefined ? tag : `${tag}: ${description}`}</Link>
                </li>
              ))}
            <li>
              <Link to={namesPath(job, set, step)}>{say("name-next")}</Link>
            </li>
          </ul>
        </section>
      ))}
    </>
  );
}

/** One step: its cautions first, then the pictures, readings and answers that it asks. */
export function StepPage({ job, rest: [id = "", tag] }: JobPart) {
  const { say } = useSpeaking();
  const told = useTold(job);
  const step = told?.now.state.sheet?.steps.find((one) => one.id === id);
  if (told === undefined || step === undefined) return <NotHere />;
  const { now, sayer } = told;
  const cautions = step.cautions.map((caution) => sayer.words(now.state.sheet?.cautions.find((one) => one.id === caution)?.text));
  const instances = askedIn(told, id).filter((one) => (tag === undefined ? one.tag === undefined : one.tag === tag));
  const back = tag === undefined ? { to: jobPath(job), title: now.view.title } : { to: stepPath(job, id), title: sayer.words(step.title) };
  return (
    <PhoneFrame title={tag === undefined ? `${step.number}. ${sayer.words(step.title)}` : `${sayer.words(step.title)}: ${tag}`} back={back}>
      <JustEntered job={job} told={told} />
      {cautions.length > 0 && (
        <div class="cautions">
          <h2>{say("cautions")}</h2>
          {cautions.map((caution) => (
            <p key={caution}>{caution}</p>
          ))}
        </div>
      )}
      {tag === undefined && <Names job={job} step={id} told={told} />}
      <Rows job={job} told={told} instances={instances} />
      <Found step={id} tag={tag} told={told} />
      {tag !== undefined && <NameNext job={job} step={id} tag={tag} told={told} />}
      <StepGoesOn job={job} step={id} tag={tag} told={told} />
    </PhoneFrame>
  );
}
