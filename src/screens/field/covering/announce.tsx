import { useState } from "preact/hooks";
import { Section } from "../../parts/section.tsx";
import { useSpeaking } from "../../parts/speaking.ts";
import { useKeep } from "../keep/index.ts";
import { useEnter } from "../use-enter.ts";

const HOUR_MS = 3_600_000;
const hours = [0.5, 1, 2, 4] as const;

/** Half an hour of a clock: nobody says 14:07 of what he means to do. */
const rounded = (at: number): number => Math.ceil(at / (HOUR_MS / 4)) * (HOUR_MS / 4);

const clock = (at: number, language: string): string =>
  new Intl.DateTimeFormat(language, { hour: "numeric", minute: "2-digit" }).format(at);

/** Says when it will be covered, so that the office hears of it before: one press. */
export function Announce({ job, covering }: { readonly job: string; readonly covering: string }) {
  const { say, session } = useSpeaking();
  const { keep } = useKeep();
  const enter = useEnter(job);
  const [said, setSaid] = useState("");
  const announce = async (about: number): Promise<void> => {
    const entered = await enter("covering-announced", { what: { covering, about } });
    if (entered?.is === "kept") setSaid(say("announced-said", { time: clock(about, session.language) }));
  };
  const now = keep.now();
  return (
    <Section title="announce">
      <div class="row-of-four">
        {hours.map((hour) => {
          const about = rounded(now + hour * HOUR_MS);
          return (
            <button key={hour} type="button" class="target" onClick={() => void announce(about)}>
              {clock(about, session.language)}
            </button>
          );
        })}
      </div>
      <p role="status">{said}</p>
    </Section>
  );
}
