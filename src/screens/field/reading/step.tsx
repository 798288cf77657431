import { type Instance, isEntered } from "../../../job/index.ts";
import { Link } from "../../parts/link.tsx";
import { jobPath } from "../../parts/place.ts";
import { Section } from "../../parts/section.tsx";
import { shapeOfFinding } from "../../parts/shapes.ts";
import { Sign } from "../../parts/sign.tsx";
import { useSpeaking } from "../../parts/speaking.ts";
import { isSetUp } from "../covering/points.ts";
import { NotHere, PhoneFrame } from "../frame.tsx";
import type { JobPart } from "../job-part.ts";
import { namesPath, setUpPath, stepPath, takePath } from "../paths.ts";
import { type ToldOnPhone, useTold } from "../told.ts";
import { JustEntered } from "./just-entered.tsx";
import { askedIn } from "./next-open.ts";
import { setUpItems } from "./set-up-points.ts";
import { StepGoesOn } from "./step-goes-on.tsx";
import { typedText } from "./typed-text.ts";
import { findingsOn } from "./verdict-now.tsx";

interface RowsProps {
  readonly job: string;
  readonly told: ToldOnPhone;
  readonly instances: readonly Instance[];
}

/** One thing that a step asks: its sign, its title, what it comes to. */
function Row({ job, told, instance: { item, tag } }: Omit<RowsProps, "instances"> & { readonly instance: Instance }) {
  const { say } = useSpeaking();
  const { now, sayer } = told;
  const found = findingsOn(told, item, tag);
  const entered = isEntered(now.state, tag === undefined ? { item } : { item, tag });
  const [first] = found;
  const read = now.state.facts.findLast(
    ({ kind, standing, what }) => kind === "reading-taken" && standing === "counts" && what.item === item.id && what.tag === tag,
  );
  return (
    <li>
      <Link to={takePath(job, item.id, tag)}>
        {first === undefined || !entered ? <Sign shape="missing" /> : <Sign shape={shapeOfFinding(first)} />}
        <span class="step-name">
          <b>{sayer.title({ item: item.id, ...(tag === undefined ? {} : { tag }) })}</b>
          <span>
            {read === undefined
              ? say(entered ? "row-entered" : item.weight === "holds" ? "row-holds" : "row-asked")
              : typedText(item, String(read.what.typed), sayer)}
          </span>
        </span>
      </Link>
    </li>
  );
}

/** Places that are read from one set-up stand as one row, which leads to the drawing. */
function SetUps({ job, told, instances }: RowsProps) {
  const { say } = useSpeaking();
  const { now, sayer } = told;
  const { sheet } = now.state;
  const tagged = new Map(instances.map(({ item, tag }) => [item.id, tag]));
  const check = (sheet?.checks ?? []).find(
    (one) => isSetUp(sheet, one) && one.items.every((id) => tagged.has(id)) && isAsked(told, one.id),
  );
  if (check === undefined) return null;
  const tag = tagged.get(check.items[0] ?? "");
  return (
    <li>
      <Link to={setUpPath(job, check.id, tag)}>
        <span class="step-name">
          <b>{say("set-up-of", { title: sayer.words(sheet?.steps.find(({ id }) => id === check.step)?.title) })}</b>
          <span>{say("row-set-up", { count: setUpItems(told, check.step, tag).length })}</span>
        </span>
      </Link>
    </li>
  );
}

const isAsked = ({ now }: ToldOnPhone, check: string): boolean => now.findings.some((one) => one.of === "check" && one.check === check);

const kinds = ["picture", "reading", "answer"] as const;

function Rows({ job, told, instances }: RowsProps) {
  return (
    <>
      {kinds.map((kind) => {
        const some = instances.filter(({ item }) => item.kind === kind);
        if (some.length === 0) return null;
        return (
          <Section key={kind} title={`step-${kind}s`}>
            <ul class="choices">
              {kind === "reading" && <SetUps job={job} told={told} instances={some} />}
              {some.map((instance) => (
                <Row key={`${instance.item.id} ${instance.tag ?? ""}`} job={job} told={told} instance={instance} />
              ))}
            </ul>
          </Section>
        );
      })}
    </>
  );
}

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
      {tag !== undefined && <NameNext job={job} step={id} tag={tag} told={told} />}
      <StepGoesOn job={job} step={id} tag={tag} told={told} />
    </PhoneFrame>
  );
}
