import { useEffect, useMemo, useState } from "preact/hooks";
import { Section } from "../../parts/section.tsx";
import { useSpeaking } from "../../parts/speaking.ts";
import { NotHere, PhoneFrame } from "../frame.tsx";
import type { JobPart } from "../job-part.ts";
import { useKeep } from "../keep/index.ts";
import { stepPath } from "../paths.ts";
import { useTold } from "../told.ts";
import { useEnter } from "../use-enter.ts";
import { Instruments, type Standing, setUpWhat } from "./instruments.tsx";
import { Points } from "./points.tsx";

/** Places read one after the other from one standing of an instrument; the next comes by itself, its name to be called out. */
export function SetUpPage({ job, rest: [id = "", tag] }: JobPart) {
  const { say } = useSpeaking();
  const { keep } = useKeep();
  const told = useTold(job);
  const enter = useEnter(job);
  const [kept, setKept] = useState<{ readonly of: string; readonly setUp: string | undefined }>();
  const place = useMemo(() => `set-up ${job} ${id} ${tag ?? ""}`, [job, id, tag]);
  useEffect(() => {
    void keep.draft<string>(place).then((setUp) => setKept({ of: place, setUp }));
  }, [keep, place]);
  const check = told?.now.state.sheet?.checks.find((one) => one.id === id);
  if (told === undefined || check === undefined) return <NotHere />;
  const { now, sayer } = told;
  const step = now.state.sheet?.steps.find((one) => one.id === check.step);
  const title = sayer.words(step?.title);
  const begin = async (standing: Standing): Promise<void> => {
    const made = await enter("set-up-made", { what: setUpWhat(standing) });
    if (made?.is !== "kept") return;
    await keep.keepDraft(place, made.own.id);
    setKept({ of: place, setUp: made.own.id });
  };
  // nothing to touch before it is known what is kept: what is shown then would be taken away from under the thumb
  const isRead = kept?.of === place;
  const setUp = isRead ? kept.setUp : undefined;
  const known = setUp !== undefined && now.state.setUps.has(setUp);
  return (
    <PhoneFrame title={say("set-up-of", { title })} back={{ to: stepPath(job, check.step, tag), title }}>
      {known ? (
        <Points key={setUp} job={job} check={check} tag={tag} told={told} setUp={setUp}>
          <Section title="set-up-anew">
            <button
              type="button"
              class="target"
              onClick={() => {
                setKept({ of: place, setUp: undefined });
                void keep.keepDraft(place, undefined);
              }}
            >
              {say("set-up-moved")}
            </button>
          </Section>
        </Points>
      ) : (
        isRead && <Instruments told={told} begin={begin} />
      )}
    </PhoneFrame>
  );
}
