import { useCallback, useState } from "preact/hooks";
import { itemNamed } from "../../../job/index.ts";
import { useSpeaking } from "../../parts/speaking.ts";
import type { Taking } from "../job-part.ts";
import { stepPath } from "../paths.ts";
import type { ToldOnPhone } from "../told.ts";
import { useEnter } from "../use-enter.ts";
import { nextOpen } from "./next-open.ts";
import { typedText } from "./typed-text.ts";
import { findingsOn, VerdictNow } from "./verdict-now.tsx";

/** What was entered last and on which page that is said: the one that came by itself, and no other. */
interface Just {
  readonly entry: string;
  readonly at: string;
  readonly from: string;
}

let just: Just | undefined;

/** Goes on after an entry: to the next open thing of the step, or back to the step when there is none. */
export function useGoOn({ job, item, tag, told }: Taking): (entry: string) => void {
  const { go } = useSpeaking();
  return useCallback(
    (entry) => {
      const at = nextOpen(told, job, item, tag)?.path ?? stepPath(job, item.step, tag);
      just = { entry, at, from: location.pathname };
      go(at);
    },
    [job, item, tag, told, go],
  );
}

interface JustEnteredProps {
  readonly job: string;
  readonly told: ToldOnPhone;
  /** What was entered on this very page, before the next thing comes. */
  readonly entry?: string;
}

/** What was entered a moment ago, what it comes to, and the way to take it back: on top of what came by itself. */
export function JustEntered({ job, told, entry }: JustEnteredProps) {
  const { say, go } = useSpeaking();
  const enter = useEnter(job);
  const [before] = useState(() => (just?.at === location.pathname ? just : undefined));
  const shown = entry === undefined ? before : { entry, from: location.pathname };
  const { now, sayer } = told;
  const fact = shown && now.state.facts.find(({ id }) => id === shown.entry);
  const item = fact && now.state.sheet && itemNamed(now.state.sheet, String(fact.what.item));
  if (shown === undefined || fact?.standing !== "counts" || item === undefined) return null;
  const tag = typeof fact.what.tag === "string" ? fact.what.tag : undefined;
  const { typed, choice } = fact.what;
  const said =
    typeof typed === "string"
      ? typedText(item, typed, sayer)
      : choice === undefined
        ? ""
        : sayer.words(item.choices?.find(({ id }) => id === choice)?.title);
  const takeBack = async (): Promise<void> => {
    const { id, digest } = fact.entry;
    const entered = await enter("corrected", { what: { entry: { id, digest }, reason: say("set-up-undone"), withdrawn: true } });
    if (entered?.is === "kept") go(shown.from);
  };
  return (
    <section class="just-entered" aria-label={say("just-entered")}>
      <div>
        <p role="status">
          {item.kind === "picture" && `${say("picture-kept")} `}
          {sayer.title(tag === undefined ? { item: item.id } : { item: item.id, tag })}
          {said !== "" && (
            <>
              : <b>{said}</b>
            </>
          )}
        </p>
        {item.kind === "reading" && <VerdictNow found={findingsOn(told, item, tag)} sayer={sayer} />}
      </div>
      <button type="button" class="target" onClick={() => void takeBack()}>
        {say("just-take-back")}
      </button>
    </section>
  );
}
