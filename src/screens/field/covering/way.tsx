import { useEffect, useState } from "preact/hooks";
import { type About, itemNamed } from "../../../job/index.ts";
import type { Json } from "../../../ledger/index.ts";
import { useSpeaking } from "../../parts/speaking.ts";
import type { ScreenWord } from "../../parts/words/index.ts";
import { NotHere, PhoneFrame } from "../frame.tsx";
import type { JobPart } from "../job-part.ts";
import { useKeep, type Words } from "../keep/index.ts";
import { coverPath, noCovering, stepPath, takePath } from "../paths.ts";
import { useTold } from "../told.ts";
import { useEnter } from "../use-enter.ts";
import { aboutOfAddress } from "./address.ts";

interface Asked {
  readonly reason: string;
  readonly name: string;
  readonly minutes: string;
}

interface Said {
  readonly kind: string;
  readonly title: ScreenWord;
  readonly words: (about: About, covering: string, asked: Asked) => Words;
  /** Whose word it is, besides the reason. */
  readonly name?: boolean;
  readonly minutes?: boolean;
}

const plain = (about: About): Json => ({ ...about });

/** What is entered in place of the thing itself, by the way's name in the address. */
const ways: Readonly<Record<string, Said>> = {
  "does-not-apply": {
    kind: "does-not-apply",
    title: "way-why-not-apply",
    words: (about, _, { reason }) => ({ what: { about: plain(about), reason, role: "crew" } }),
  },
  "could-not-be-taken": {
    kind: "could-not-be-taken",
    title: "way-why-not-taken",
    words: (about, _, { reason }) => ({ what: { about: plain(about), reason } }),
  },
  "go-ahead-by-telephone": {
    kind: "go-ahead",
    title: "way-why-go-ahead",
    name: true,
    words: (about, covering, { reason, name }) => ({
      // entered by the crew: the office confirms its own word afterwards
      what: { covering, reason, role: "crew", about: [plain(about)] },
      who: { name },
    }),
  },
  "rework-it": {
    kind: "reworked",
    title: "way-what-reworked",
    minutes: true,
    words: (about, _, { reason, minutes }) => ({ what: { about: plain(about), done: reason, minutes: Number(minutes) || 0 } }),
  },
};

const empty: Asked = { reason: "", name: "", minutes: "" };

/** Says why something is not taken, or on whose word it is covered; what was typed survives the telephone call. */
export function WayPage({ job, rest: [way = "", thing, tag, covering = ""] }: JobPart) {
  const { say, go } = useSpeaking();
  const { keep } = useKeep();
  const told = useTold(job);
  const enter = useEnter(job);
  const [asked, setAsked] = useState(empty);
  const [refused, setRefused] = useState("");
  const place = `way ${job} ${way} ${thing} ${tag}`;
  useEffect(() => {
    void keep.draft<Asked>(place).then((draft) => draft !== undefined && setAsked(draft));
  }, [keep, place]);
  const said = Object.hasOwn(ways, way) ? ways[way] : undefined;
  if (told === undefined || said === undefined) return <NotHere />;
  const { now, sayer } = told;
  const about = aboutOfAddress(thing, tag);
  const item = now.state.sheet && itemNamed(now.state.sheet, about.item ?? "");
  const step = item?.step ?? now.state.sheet?.checks.find(({ id }) => id === about.check)?.step;
  const typed = (some: Partial<Asked>): void => {
    const next = { ...asked, ...some };
    setAsked(next);
    void keep.keepDraft(place, next);
  };
  const isWhole = asked.reason.trim() !== "" && (!said.name || asked.name.trim() !== "");
  const send = async (): Promise<void> => {
    if (!isWhole) return setRefused(say(said.name ? "way-say-who-and-why" : "way-say-why"));
    const entered = await enter(said.kind, { ...said.words(about, covering, asked), draft: place });
    if (entered?.is === "no room") setRefused(say("unsent-full"));
    if (entered?.is === "refused") setRefused(sayer.refusal(entered.refusal));
    if (entered?.is !== "kept") return;
    go(covering === noCovering && step !== undefined ? stepPath(job, step, about.tag) : coverPath(job, covering));
  };
  const back =
    covering === noCovering
      ? { to: item === undefined ? stepPath(job, step ?? "", about.tag) : takePath(job, item.id, about.tag), title: sayer.title(about) }
      : { to: coverPath(job, covering), title: sayer.words(now.state.sheet?.coverings.find(({ id }) => id === covering)?.title) };
  return (
    <PhoneFrame title={sayer.title(about)} back={back}>
      {said.name && (
        <label class="typed">
          {say("way-whose-word")}
          <input type="text" value={asked.name} autoComplete="off" onInput={(event) => typed({ name: event.currentTarget.value })} />
        </label>
      )}
      <label class="typed">
        {say(said.title)}
        <textarea rows={3} value={asked.reason} onInput={(event) => typed({ reason: event.currentTarget.value })} />
      </label>
      {said.minutes && (
        <label class="typed">
          {say("way-minutes")}
          <input
            type="text"
            inputMode="numeric"
            value={asked.minutes}
            onInput={(event) => typed({ minutes: event.currentTarget.value.replaceAll(/\D/g, "") })}
          />
        </label>
      )}
      <p role="alert">{refused}</p>
      <button type="button" class="target main" onClick={() => void send()}>
        {say("way-enter")}
      </button>
    </PhoneFrame>
  );
}
