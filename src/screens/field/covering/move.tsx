import { useState } from "preact/hooks";
import { itemNamed } from "../../../job/index.ts";
import type { Json } from "../../../ledger/index.ts";
import { Section } from "../../parts/section.tsx";
import { useSpeaking } from "../../parts/speaking.ts";
import { NotHere, PhoneFrame } from "../frame.tsx";
import type { JobPart } from "../job-part.ts";
import { stepPath, takePath } from "../paths.ts";
import { useTold } from "../told.ts";
import { useEnter } from "../use-enter.ts";
import { type Goal, goalsOf } from "./goals.ts";
import { Mend } from "./mend.tsx";

/** An entry that went to the wrong corner, step or joint: moved as it is, with its time; or a reading typed otherwise than it was read. The first keeps a note of it. */
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
  const correct = async (reason: string, replace: { readonly [name: string]: Json }, to: string): Promise<void> => {
    const { id: entry, digest } = fact.entry;
    const entered = await enter("corrected", { what: { entry: { id: entry, digest }, reason, replace } });
    if (entered?.is === "kept") go(to);
    if (entered?.is === "no room") setRefused(say("unsent-full"));
    if (entered?.is === "refused") setRefused(sayer.refusal(entered.refusal));
  };
  const move = (goal: Goal): Promise<void> =>
    correct(
      say("move-reason", { title: titled(from) }),
      { item: goal.item.id, ...(goal.tag === undefined ? {} : { tag: goal.tag }) },
      stepPath(job, goal.item.step, goal.tag),
    );
  const { typed, unit } = fact.what;
  return (
    <PhoneFrame
      title={titled(from)}
      back={{ to: stepPath(job, item.step, tag), title: sayer.words(sheet?.steps.find((step) => step.id === item.step)?.title) }}
    >
      {typeof typed === "string" && typeof unit === "string" && (
        <Mend
          item={item}
          unit={unit}
          typed={typed}
          told={told}
          onMend={(text, reason) => void correct(reason, { typed: text }, takePath(job, item.id, tag))}
        />
      )}
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
