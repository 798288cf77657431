import type { ComponentChildren } from "preact";
import { useEffect, useState } from "preact/hooks";
import { askedOf, type Check, type Live } from "../../../job/index.ts";
import { readQuantity } from "../../../reading/index.ts";
import { Link } from "../../parts/link.tsx";
import { useSpeaking } from "../../parts/speaking.ts";
import { stepPath } from "../paths.ts";
import type { ToldOnPhone } from "../told.ts";
import { useEnter } from "../use-enter.ts";
import { nextOpen, titleOfNext } from "./next-open.ts";
import { pointsOf, type SetUpPoint, setUpItems } from "./set-up-points.ts";
import { TapeOrText } from "./tape-or-text.tsx";
import { Thing } from "./thing.tsx";
import { findingsOn, isDoubtful, VerdictNow } from "./verdict-now.tsx";

/** Readings of one set-up that count. */
const readIn = ({ now }: ToldOnPhone, setUp: string | undefined): readonly Live[] =>
  setUp === undefined
    ? []
    : now.state.facts.filter(({ kind, standing, what }) => kind === "reading-taken" && standing === "counts" && what.setUp === setUp);

export function Points({
  job,
  check,
  tag,
  told,
  setUp,
  children,
}: {
  readonly job: string;
  readonly check: Check;
  readonly tag: string | undefined;
  readonly told: ToldOnPhone;
  readonly setUp: string;
  /** What stands between the tape and the row under the thumb. */
  readonly children: ComponentChildren;
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
    ({ of, step }) => of === "check" && step === check.step,
  );
  // whatever is in doubt stands first
  const inOrder = [...found.filter(isDoubtful), ...found.filter((one) => !isDoubtful(one))];
  // the name of the next place is called out: it is in sight, wherever the thumb was
  useEffect(() => scrollTo(0, 0), [at]);
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
      {point !== undefined && (
        <p class="call-out" role="status">
          {titled(point)}
          {point.item === points[0]?.item && at > 0 && ` ${say("set-up-again")}`}
        </p>
      )}
      <Thing check={check} points={points} now={at} title={titled} />
      {point === undefined ? (
        <VerdictNow found={inOrder} sayer={sayer} />
      ) : (
        <>
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
        </>
      )}
      {children}
      <div class={last === undefined ? "shutter-row alone" : "shutter-row"}>
        {point === undefined ? (
          <Link to={next?.path ?? stepPath(job, check.step, tag)} class="target main">
            {next === undefined ? say("reading-to-step") : say("reading-next", { title: titleOfNext(next, told, say) })}
          </Link>
        ) : (
          <button type="button" class="target main enter-reading" onClick={() => void take()}>
            {say("set-up-enter", { number: at + 1, all: points.length })}
          </button>
        )}
        {last !== undefined && (
          <button type="button" class="target" onClick={() => void undo()}>
            {say("set-up-undo", { typed: String(last.what.typed) })}
          </button>
        )}
      </div>
    </>
  );
}
