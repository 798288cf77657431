import { useEffect, useMemo, useState } from "preact/hooks";
import { askedOf, type Check, type Live } from "../../../job/index.ts";
import { readQuantity } from "../../../reading/index.ts";
import { Link } from "../../parts/link.tsx";
import { Section } from "../../parts/section.tsx";
import { useSpeaking } from "../../parts/speaking.ts";
import { NotHere, PhoneFrame } from "../frame.tsx";
import type { JobPart } from "../job-part.ts";
import { useKeep } from "../keep/index.ts";
import { stepPath } from "../paths.ts";
import { type ToldOnPhone, useTold } from "../told.ts";
import { useEnter } from "../use-enter.ts";
import { Instruments, type Standing, setUpWhat } from "./instruments.tsx";
import { nextOpen } from "./next-open.ts";
import { pointsOf, type SetUpPoint, setUpItems } from "./set-up-points.ts";
import { TapeOrText } from "./tape-or-text.tsx";
import { Thing } from "./thing.tsx";
import { findingsOn, VerdictNow } from "./verdict-now.tsx";

/** Readings of one set-up that count. */
const readIn = ({ now }: ToldOnPhone, setUp: string | undefined): readonly Live[] =>
  setUp === undefined
    ? []
    : now.state.facts.filter(({ kind, standing, what }) => kind === "reading-taken" && standing === "counts" && what.setUp === setUp);

function Points({
  job,
  check,
  tag,
  told,
  setUp,
}: {
  readonly job: string;
  readonly check: Check;
  readonly tag: string | undefined;
  readonly told: ToldOnPhone;
  readonly setUp: string;
}) {
  const { say, session } = useSpeaking();
  const enter = useEnter(job);
  const [typed, setTyped] = useState("");
  const [refused, setRefused] = useState("");
  const { sayer } = told;
  const facts = readIn(told, setUp);
  const items = setUpItems(told, check.step, tag);
  const points = pointsOf(items, tag, facts);
  const at = points.findIndex(({ fact }) => fact === undefined);
  const point = points[at];
  const last = facts.at(-1);
  const found = [...new Set(items.flatMap((item) => findingsOn(told, item, item.tags === undefined ? undefined : tag)))].filter(
    ({ of, weight }) => of === "check" || weight === "holds",
  );
  const [end] = items.slice(-1);
  const next = end && nextOpen(told, job, end, tag);

  const take = async (): Promise<void> => {
    if (point === undefined) return;
    const unit = point.item.unit?.[session.units] ?? "";
    const read = readQuantity(typed, askedOf(point.item, unit));
    if (!read.ok) return setRefused(sayer.refusal(read.refusal));
    const about = { item: point.item.id, ...(point.tag === undefined ? {} : { tag: point.tag }) };
    const answer = await enter("reading-taken", { what: { ...about, typed, unit, setUp } });
    if (answer?.is === "no room") return setRefused(say("unsent-full"));
    if (answer?.is === "refused") return setRefused(sayer.refusal(answer.refusal));
    if (answer?.is === "kept") setTyped("");
  };
  const undo = async (): Promise<void> => {
    if (last === undefined) return;
    await enter("corrected", {
      what: { entry: { id: last.entry.id, digest: last.entry.digest }, reason: say("set-up-undone"), withdrawn: true },
    });
  };
  const titled = (one: SetUpPoint): string => sayer.words(one.item.title);
  return (
    <>
      <Thing check={check} points={points} now={at} title={titled} />
      {point === undefined ? (
        <>
          <VerdictNow found={found} sayer={sayer} />
          <Link to={next?.path ?? stepPath(job, check.step, tag)} class="target main">
            {next === undefined ? say("reading-to-step") : say("reading-next", { title: sayer.title(next.about) })}
          </Link>
        </>
      ) : (
        <>
          <p class="call-out" role="status">
            {titled(point)}
            {point.item === points[0]?.item && at > 0 && ` ${say("set-up-again")}`}
          </p>
          <TapeOrText
            key={at}
            item={point.item}
            unit={point.item.unit?.[session.units] ?? ""}
            value={typed}
            label={titled(point)}
            onChange={(text) => {
              setTyped(text);
              setRefused("");
            }}
          />
          <p role="alert">{refused}</p>
          <button type="button" class="target main enter-reading" onClick={() => void take()}>
            {say("set-up-enter", { number: at + 1, all: points.length })}
          </button>
        </>
      )}
      {last !== undefined && (
        <button type="button" class="target" onClick={() => void undo()}>
          {say("set-up-undo", { typed: String(last.what.typed) })}
        </button>
      )}
    </>
  );
}

/** Places read one after the other from one standing of an instrument; the next comes by itself, its name to be called out. */
export function SetUpPage({ job, rest: [id = "", tag] }: JobPart) {
  const { say } = useSpeaking();
  const { keep } = useKeep();
  const told = useTold(job);
  const enter = useEnter(job);
  const [setUp, setSetUp] = useState<string>();
  const place = useMemo(() => `set-up ${job} ${id} ${tag ?? ""}`, [job, id, tag]);
  useEffect(() => {
    void keep.draft<string>(place).then(setSetUp);
  }, [keep, place]);
  const check = told?.now.state.sheet?.checks.find((one) => one.id === id);
  if (told === undefined || check === undefined) return <NotHere />;
  const { now, sayer } = told;
  const step = now.state.sheet?.steps.find((one) => one.id === check.step);
  const about = { check: check.id, ...(tag === undefined ? {} : { tag }) };
  const begin = async (standing: Standing): Promise<void> => {
    const made = await enter("set-up-made", {
      what: setUpWhat(standing),
    });
    if (made?.is !== "kept") return;
    await keep.keepDraft(place, made.own.id);
    setSetUp(made.own.id);
  };
  const known = setUp !== undefined && now.state.setUps.has(setUp);
  return (
    <PhoneFrame title={sayer.title(about)} back={{ to: stepPath(job, check.step, tag), title: sayer.words(step?.title) }}>
      {known ? (
        <>
          <Points key={setUp} job={job} check={check} tag={tag} told={told} setUp={setUp} />
          <Section title="set-up-anew">
            <button
              type="button"
              class="target"
              onClick={() => {
                setSetUp(undefined);
                void keep.keepDraft(place, undefined);
              }}
            >
              {say("set-up-moved")}
            </button>
          </Section>
        </>
      ) : (
        <Instruments told={told} begin={begin} />
      )}
    </PhoneFrame>
  );
}
