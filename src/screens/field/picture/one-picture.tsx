import type { ComponentChildren } from "preact";
import { useEffect, useState } from "preact/hooks";
import type { EntryReference } from "../../../job/index.ts";
import { useSpeaking } from "../../parts/speaking.ts";
import type { Taking } from "../job-part.ts";
import { useKeep } from "../keep/index.ts";
import { useEnter } from "../use-enter.ts";
import { useNotReceived } from "./camera.ts";
import { useEnterPicture } from "./enter-picture.ts";
import { Files } from "./files.tsx";
import { readyToJudge } from "./judging.ts";
import { AskPosition, usePosition } from "./position.tsx";
import { JudgedText, SmallPhoto, takeIn, useSeen } from "./seen.tsx";
import { ShutterRow } from "./shutter-row.tsx";
import { picturesSoFar, SoFar } from "./so-far.tsx";
import type { Chosen, Judged, Pictured } from "./what.ts";
import { whereOf } from "./where.ts";

/** What survives the camera, a restart and the way to 'who enters today'. `before`: what was chosen first and taken again. */
interface Draft {
  readonly chosen?: Chosen;
  readonly before: readonly Chosen[];
  readonly caption: string;
}

const empty: Draft = { before: [], caption: "" };

interface OnePictureProps extends Pick<Taking, "job" | "told"> {
  readonly pictured: Pictured;
  readonly title: string;
  /** Where the page goes on by itself once the picture is kept; without it, it stays and says so. */
  readonly onKept?: (entry: string) => void;
  /** The other ways, while nothing is in hand. */
  readonly children: ComponentChildren;
}

function Preview({ chosen, title }: { readonly chosen: Chosen; readonly title: string }) {
  const seen = useSeen(chosen.photo, true);
  return <SmallPhoto seen={seen} title={title} />;
}

/** The picture of one thing: taken, looked at by this phone at once, kept; taken again, the first stays as replaced. */
export function OnePicture({ job, told, pictured, title, onKept, children }: OnePictureProps) {
  const { say } = useSpeaking();
  const { keep } = useKeep();
  const enter = useEnter(job);
  const enterPicture = useEnterPicture(job);
  const today = usePosition();
  const [notReceived, received] = useNotReceived();
  const [draft, setDraft] = useState(empty);
  /** `true`: a file came and nothing is known of it yet; then what this phone made of it, while its bytes are still being kept. */
  const [looking, setLooking] = useState<boolean | Judged>(false);
  const [refused, setRefused] = useState("");
  const [kept, setKept] = useState(false);
  const place = `picture ${job} ${pictured.item} ${pictured.tag ?? ""}`;
  useEffect(readyToJudge, []);
  useEffect(() => {
    void keep.draft<Draft>(place).then((before) => {
      // put to another picture meanwhile, it waits here no more
      const loose = keep.state.photos.some(({ sha256, loose }) => loose === true && sha256 === before?.chosen?.photo.sha256);
      if (before !== undefined && loose) setDraft(before);
    });
  }, [keep, place]);
  const change = async (next: Draft): Promise<void> => {
    setDraft(next);
    await keep.keepDraft(place, next === empty ? undefined : next);
  };
  const { chosen, before, caption } = draft;

  const take = async ([file]: readonly File[]): Promise<void> => {
    if (file === undefined) return;
    received();
    setRefused("");
    setKept(false);
    setLooking(true);
    const taken = Date.now();
    const where = whereOf(today.position, taken);
    const came = await takeIn(keep, job, file, taken, setLooking);
    setLooking(false);
    if (came === "no room") return setRefused(say("unsent-full"));
    await change({
      chosen: { ...came, ...(where === undefined ? {} : { where }) },
      before: chosen === undefined ? before : [...before, chosen].filter(({ photo }) => photo.sha256 !== came.photo.sha256),
      caption,
    });
  };

  /** Enters one photo; undefined where it could not be, and the page says why. */
  const entered = async (one: Chosen, words: string): Promise<EntryReference | undefined> => {
    const where = one.where ?? whereOf(today.position, one.photo.taken);
    const answer = await enterPicture(pictured, { ...one, ...(where === undefined ? {} : { where }) }, words);
    if (answer === "lost") setRefused(say("picture-lost"));
    else if (answer?.is === "no room") setRefused(say("unsent-full"));
    else if (answer?.is === "refused") setRefused(told.sayer.refusal(answer.refusal));
    else if (answer?.is === "kept") return { id: answer.own.id, digest: answer.own.entry.digest ?? "" };
    return undefined;
  };

  const finish = async (instead?: EntryReference): Promise<void> => {
    if (chosen === undefined) return;
    const replaced: EntryReference[] = instead === undefined ? [] : [instead];
    for (const one of before) {
      const reference = await entered(one, "");
      if (reference === undefined) return;
      replaced.push(reference);
    }
    const own = await entered(chosen, caption);
    if (own === undefined) return;
    for (const entry of replaced)
      await enter("corrected", { what: { entry: { ...entry }, reason: say("picture-replaced"), withdrawn: true } });
    await change(empty);
    if (onKept === undefined) setKept(true);
    else onKept(own.id);
  };

  const last = picturesSoFar(told, pictured).at(-1);
  const poor = chosen?.judged?.verdict === "unreadable";
  return (
    <>
      {notReceived && chosen === undefined && (
        <p role="alert" class="stands-out">
          {say("picture-not-received")}
        </p>
      )}
      <p role="alert">{refused}</p>
      {looking !== false && <JudgedText judged={looking === true ? undefined : looking} />}
      {chosen !== undefined && looking === false && (
        <section class="chosen-picture">
          <JudgedText judged={chosen.judged} />
          <Preview key={chosen.photo.sha256} chosen={chosen} title={title} />
          <label class="typed">
            {say("picture-caption")}
            <input
              type="text"
              autoComplete="off"
              maxLength={2000}
              value={caption}
              onInput={(event) => void change({ ...draft, caption: event.currentTarget.value })}
            />
          </label>
          {poor && (
            <Files from="phone" class="target" onFiles={take}>
              {say("picture-choose")}
            </Files>
          )}
          {!poor && last !== undefined && (
            <button type="button" class="target" onClick={() => void finish({ id: last.entry.id, digest: last.entry.digest })}>
              {say("picture-keep-instead")}
            </button>
          )}
        </section>
      )}
      {kept && (
        <p role="status" class="stands-out">
          {say("picture-kept")}
        </p>
      )}
      {chosen === undefined && <AskPosition today={today} why="position-why" />}
      {chosen === undefined && <SoFar job={job} told={told} pictured={pictured} title={title} />}
      {chosen === undefined && children}
      <ShutterRow
        stands={chosen === undefined ? "nothing" : poor ? "poor" : "good"}
        others={last !== undefined || kept}
        waits={looking !== false}
        onFiles={take}
        onKeep={() => void finish()}
      />
    </>
  );
}
