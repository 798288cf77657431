import { useState } from "preact/hooks";
import { useSpeaking } from "../../parts/speaking.ts";
import { PhoneFrame } from "../frame.tsx";
import type { Taking } from "../job-part.ts";
import { stepPath } from "../paths.ts";
import { JustEntered, useGoOn } from "../reading/just-entered.tsx";
import { OtherWays } from "../reading/other-ways.tsx";
import { ReworkAsked } from "../reading/rework-asked.tsx";
import { useEnter } from "../use-enter.ts";

/** An answer: one press, and the next thing comes by itself. */
export function AnswerPage(taking: Taking) {
  const { job, item, tag, told } = taking;
  const { now, sayer } = told;
  const { say } = useSpeaking();
  const goOn = useGoOn(taking);
  const enter = useEnter(job);
  const [refused, setRefused] = useState("");
  const { sheet } = now.state;
  const step = sheet?.steps.find(({ id }) => id === item.step);
  const about = tag === undefined ? { item: item.id } : { item: item.id, tag };
  const before = now.state.facts.findLast(
    ({ kind, standing, what }) => kind === "answered" && standing === "counts" && what.item === item.id && what.tag === tag,
  );
  const cautions = (item.cautions ?? []).map((caution) => sayer.words(sheet?.cautions.find(({ id }) => id === caution)?.text));
  const answer = async (choice: string): Promise<void> => {
    const entered = await enter("answered", { what: { ...about, choice } });
    if (entered?.is === "kept") goOn(entered.own.id);
    if (entered?.is === "no room") setRefused(say("unsent-full"));
    if (entered?.is === "refused") setRefused(sayer.refusal(entered.refusal));
  };
  return (
    <PhoneFrame title={sayer.title(about)} back={{ to: stepPath(job, item.step, tag), title: sayer.words(step?.title) }}>
      <JustEntered job={job} told={told} />
      {item.prompt !== undefined && <p class="prompt">{sayer.words(item.prompt)}</p>}
      <ReworkAsked {...taking} />
      {cautions.map((caution) => (
        <p key={caution} class="cautions">
          {caution}
        </p>
      ))}
      <ul class="choices">
        {(item.choices ?? []).map(({ id, title }) => (
          <li key={id}>
            <button type="button" class="target" aria-pressed={before?.what.choice === id} onClick={() => void answer(id)}>
              {sayer.words(title)}
            </button>
          </li>
        ))}
      </ul>
      <p role="alert">{refused}</p>
      <OtherWays {...taking} />
    </PhoneFrame>
  );
}
