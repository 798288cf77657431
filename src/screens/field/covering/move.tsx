import { useState } from "preact/hooks";
import { type Item, itemNamed, type Tag } from "../../../job/index.ts";
import { Section } from "../../parts/section.tsx";
import { useSpeaking } from "../../parts/speaking.ts";
import { NotHere, PhoneFrame } from "../frame.tsx";
import type { JobPart } from "../job-part.ts";
import { stepPath } from "../paths.ts";
import { useTold } from "../told.ts";
import { useEnter } from "../use-enter.ts";

interface Goal {
  readonly item: Item;
  readonly tag?: string;
}

const alike = (one: Item, other: Item): boolean =>
  one.kind === other.kind && one.quantity === other.quantity && one.inSetUp === other.inSetUp;

/** The places of the same kind that an entry can be meant for: its own step first. */
export function goalsOf(items: readonly Item[], tags: readonly Tag[], from: Goal): readonly Goal[] {
  const goals = items
    .filter((item) => alike(item, from.item))
    .flatMap((item): readonly Goal[] =>
      item.tags === undefined ? [{ item }] : tags.filter(({ set }) => set === item.tags).map(({ tag }) => ({ item, tag })),
    )
    .filter(({ item, tag }) => item.id !== from.item.id || tag !== from.tag);
  const own = ({ item }: Goal): number => (item.id === from.item.id ? 0 : item.step === from.item.step ? 1 : 2);
  return [...goals].sort((a, b) => own(a) - own(b));
}

/** An entry that went to the wrong corner, step or joint: moved as it is, with its time; the first place keeps a note of it. */
export function MovePage({ job, rest: [id = ""] }: JobPart) {
  const { say, go } = useSpeaking();
  const told = useTold(job);
  const enter = useEnter(job);
  const [refused, setRefused] = useState("");
  const fact = told?.now.state.facts.find((one) => one.id === id);
  const sheet = told?.now.state.sheet;
  const item = sheet && itemNamed(sheet, String(fact?.what.item ?? ""));
  if (told === undefined || fact === undefined || item === undefined) return <NotHere />;
  const { now, sayer } = told;
  const tag = typeof fact.what.tag === "string" ? fact.what.tag : undefined;
  const titled = (goal: Goal): string => sayer.title({ item: goal.item.id, ...(goal.tag === undefined ? {} : { tag: goal.tag }) });
  const from: Goal = { item, ...(tag === undefined ? {} : { tag }) };
  const move = async (goal: Goal): Promise<void> => {
    const entered = await enter("corrected", {
      what: {
        entry: { id: fact.entry.id, digest: fact.entry.digest },
        reason: say("move-reason", { title: titled(from) }),
        replace: { item: goal.item.id, ...(goal.tag === undefined ? {} : { tag: goal.tag }) },
      },
    });
    if (entered?.is === "kept") go(stepPath(job, goal.item.step, goal.tag));
    if (entered?.is === "no room") setRefused(say("unsent-full"));
    if (entered?.is === "refused") setRefused(sayer.refusal(entered.refusal));
  };
  return (
    <PhoneFrame
      title={titled(from)}
      back={{ to: stepPath(job, item.step, tag), title: sayer.words(sheet?.steps.find((step) => step.id === item.step)?.title) }}
    >
      <Section title="move-to">
        <p role="alert">{refused}</p>
        <ul class="choices">
          {goalsOf(sheet?.items ?? [], now.state.tags, from).map((goal) => (
            <li key={`${goal.item.id} ${goal.tag ?? ""}`}>
              <button type="button" class="target" onClick={() => void move(goal)}>
                {titled(goal)}
              </button>
            </li>
          ))}
        </ul>
      </Section>
    </PhoneFrame>
  );
}
