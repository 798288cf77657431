import { useMemo } from "preact/hooks";
import { type Located, sitePlaced, type WhereIsEverything, whereIsEverything } from "../../../job/index.ts";
import { lettersOf } from "../../../record/index.ts";
import { Link } from "../../parts/link.tsx";
import { jobPath } from "../../parts/place.ts";
import { Section } from "../../parts/section.tsx";
import { useSpeaking } from "../../parts/speaking.ts";
import { NotHere, PhoneFrame } from "../frame.tsx";
import type { JobPart } from "../job-part.ts";
import { takePath } from "../paths.ts";
import { type ToldOnPhone, useTold } from "../told.ts";
import { Cautions, cautionsOfItems } from "./cautions.tsx";
import { Plan } from "./plan.tsx";

interface OfJob {
  readonly job: string;
  readonly told: ToldOnPhone;
  readonly letterOf: (mark: string) => string;
}

type Distance = WhereIsEverything["marks"][number]["distances"][number];

/** Distances in large type: 'A 10 ft 7 3/4 in'. */
function Distances({
  of,
  letterOf,
  told: { sayer },
}: Omit<OfJob, "job"> & { readonly of: readonly (Distance & { disagree?: boolean })[] }) {
  const { say } = useSpeaking();
  return (
    <ul class="distances">
      {of.map(({ mark, value, disagree }) => (
        <li key={mark}>
          <span class="letter">{letterOf(mark)}</span> <b>{sayer.quantity("length", value, 16)}</b>
          {disagree === true && <span> {say("where-disagree")}</span>}
        </li>
      ))}
    </ul>
  );
}

const stateWord = { mirrored: "where-mirrored", refused: "where-refused", "not tied": "where-not-tied" } as const;

function Thing({ thing, number, ...of }: OfJob & { readonly thing: Located; readonly number: number }) {
  const { say } = useSpeaking();
  const { job, told } = of;
  const { sayer, now } = told;
  const { ties, depth, state, set, tag, name } = thing;
  const note = state === "placed" || state === "no plan" ? undefined : say(stateWord[state]);
  const tie = (now.state.sheet?.items ?? []).find(({ fromMark, tags }) => fromMark === true && set !== undefined && tags === set);
  const measured = Math.max(...ties.map(({ at }) => at));
  return (
    <li class="located">
      <h3>
        <span class="balloon">{number}</span> {sayer.words(name)}
      </h3>
      <Distances of={ties} {...of} />
      {depth !== undefined && (
        <p>
          {say(depth.of === "itself" ? "where-deep" : "where-run-deep")} <b>{sayer.quantity("length", depth.value, 16)}</b>
        </p>
      )}
      {note !== undefined && <p class="stands-out">{note}</p>}
      {ties.length > 0 && <p class="measured">{say("where-measured", { time: sayer.moment(measured) })}</p>}
      {note !== undefined && tie !== undefined && <Link to={takePath(job, tie.id, tag)}>{sayer.words(tie.title)}</Link>}
    </li>
  );
}

/** What a mark is, without the letter that stands before it already. */
const markName = (name: string, letter: string): string =>
  name === letter ? "" : name.startsWith(`${letter}, `) ? name.slice(letter.length + 2) : name;

/** Where is everything: what was tied to marks, each with its distances, and a plan as far as they give one. */
export function WherePage({ job }: JobPart) {
  const { say } = useSpeaking();
  const told = useTold(job);
  const state = told?.now.state;
  const where = useMemo(() => state && whereIsEverything(state), [state]);
  const letters = useMemo(() => state && lettersOf(sitePlaced(state, "all").marks), [state]);
  if (told === undefined || where === undefined) return <NotHere />;
  const { marks, things } = where;
  const letterOf = (mark: string): string => letters?.get(mark) ?? mark;
  const tied = (told.now.state.sheet?.items ?? []).filter(({ fromMark }) => fromMark === true);
  const isPlanned = marks.some(({ place }) => place !== undefined);
  return (
    <PhoneFrame title={say("numbers-where")} back={{ to: jobPath(job), title: told.now.view.title }}>
      {things.length + marks.length === 0 && <p class="prompt">{say("where-nothing")}</p>}
      <p class="not-judged">{say("where-only-own")}</p>
      {isPlanned ? <Plan marks={marks} things={things} letterOf={letterOf} /> : marks.length > 0 && <p>{say("where-no-plan")}</p>}
      {things.length > 0 && (
        <Section title="where-things">
          <ol class="locateds">
            {things.map((thing, i) => (
              <Thing key={thing.key} thing={thing} number={i + 1} job={job} told={told} letterOf={letterOf} />
            ))}
          </ol>
        </Section>
      )}
      {marks.length > 0 && (
        <Section title="where-marks">
          <ul class="locateds">
            {marks.map(({ name, distances }) => (
              <li key={name} class="located">
                <h3>
                  <span class="letter">{letterOf(name)}</span> {markName(name, letterOf(name))}
                </h3>
                <Distances of={distances} told={told} letterOf={letterOf} />
              </li>
            ))}
          </ul>
        </Section>
      )}
      <Cautions of={cautionsOfItems(told, tied)} told={told} />
    </PhoneFrame>
  );
}
