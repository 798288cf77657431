import { useCallback, useMemo, useRef, useState } from "preact/hooks";
import { itemNamed, type ToleranceSheet } from "../../../job/index.ts";
import type { Json } from "../../../ledger/index.ts";
import { Link } from "../../parts/link.tsx";
import { useSpeaking } from "../../parts/speaking.ts";
import type { Taking } from "../job-part.ts";
import { takePath } from "../paths.ts";
import { useEnterPicture } from "../picture/enter-picture.ts";
import { Files } from "../picture/files.tsx";
import { picturesSoFar } from "../picture/so-far.tsx";
import type { Chosen, Pictured } from "../picture/what.ts";
import { useEnter } from "../use-enter.ts";
import { useOpened } from "./in-hand.ts";
import { InPhoto, type MeasuredNow } from "./in-photo.tsx";
import { doubtText, lengthText } from "./says.ts";
import { MeasuredSoFar } from "./so-far.tsx";

/** What was just kept, and below it what it comes to beside the tape. */
const intoSight = (element: HTMLElement | null): void => element?.scrollIntoView({ block: "start" });

interface WithPhotoProps extends Pick<Taking, "job" | "told"> {
  readonly sheet: ToleranceSheet;
  readonly pictured: Pictured;
  readonly title: string;
  readonly chosen: Chosen;
  readonly onFiles: (files: readonly File[]) => Promise<void>;
  readonly onKept: () => void;
}

/** A photo in hand: its card, the length between two ends, and keeping it as an entry beside the reading. */
export function WithPhoto({ job, told, sheet, pictured, title, chosen, onFiles, onKept }: WithPhotoProps) {
  const { say, session } = useSpeaking();
  const enter = useEnter(job);
  const enterPicture = useEnterPicture(job);
  const [now, setNow] = useState<MeasuredNow>();
  const [kept, setKept] = useState<MeasuredNow["what"]>();
  const [refused, setRefused] = useState("");
  const busy = useRef(false);
  const card = useMemo(() => ({ company: session.company, job, steps: sheet.steps.map(({ id }) => id) }), [session.company, job, sheet]);
  const opened = useOpened(chosen.photo, card);
  const { sayer } = told;
  const isEntered = picturesSoFar(told, pictured).some(({ what }) => what.photo === chosen.photo.sha256);
  const keepIt = useCallback(async (): Promise<void> => {
    if (now === undefined) return;
    setRefused("");
    if (!isEntered) {
      const answer = await enterPicture(pictured, chosen, "");
      if (answer === "lost") return setRefused(say("picture-lost"));
      if (answer?.is === "no room") return setRefused(say("unsent-full"));
      if (answer?.is === "refused") return setRefused(sayer.refusal(answer.refusal));
      if (answer === undefined) return;
    }
    const answer = await enter("photo-measured", { what: now.what as unknown as Json });
    if (answer?.is === "no room") return setRefused(say("unsent-full"));
    if (answer?.is === "refused") return setRefused(sayer.refusal(answer.refusal));
    if (answer?.is !== "kept") return;
    setKept(now.what);
    onKept();
  }, [onKept, now, isEntered, enterPicture, pictured, chosen, enter, say, sayer]);
  // a second press of a wet glove enters nothing twice
  const keepOnce = async (): Promise<void> => {
    if (busy.current) return;
    busy.current = true;
    await keepIt().finally(() => {
      busy.current = false;
    });
  };
  const found = opened.is === "open" ? opened.card : undefined;
  const step = found?.is === "card" ? found.step : undefined;
  const isOther = step !== undefined && step !== itemNamed(sheet, pictured.item)?.step;
  const isKept = kept !== undefined && kept === now?.what;
  const length = now?.outcome.ok ? now.outcome.value.length : undefined;
  return (
    <>
      {opened.is === "lost" && (
        <p role="alert" class="stands-out">
          {say("measure-lost")}
        </p>
      )}
      {opened.is !== "lost" && found === undefined && <p role="status">{say("measure-looking")}</p>}
      {found !== undefined && found.is !== "card" && (
        <p role="alert" class="stands-out">
          {say(`measure-card-${found.is}`)}
        </p>
      )}
      {isOther && (
        <p role="alert" class="stands-out">
          {say("measure-card-step", { step: sayer.words(sheet.steps.find(({ id }) => id === step)?.title) })}
        </p>
      )}
      {opened.is === "open" && found?.is === "card" && (
        <InPhoto
          {...{ told, sheet, pictured, title, onMeasured: setNow }}
          photo={chosen.photo.sha256}
          picture={opened.picture}
          card={found}
        />
      )}
      <p role="alert">{refused}</p>
      {isKept && length !== undefined && (
        <p role="status" class="stands-out" ref={intoSight}>
          {say("measure-kept", { length: lengthText(sayer, length.micrometres), doubt: doubtText(sayer, length.doubt) })}
        </p>
      )}
      <MeasuredSoFar job={job} told={told} item={pictured.item} tag={pictured.tag} />
      <Files from="phone" class="target" onFiles={onFiles}>
        {say("picture-choose")}
      </Files>
      <Link to={takePath(job, pictured.item, pictured.tag)}>{say("picture-back-to-reading")}</Link>
      <div class={length !== undefined && !isKept ? (now?.enough ? "shutter-row" : "shutter-row rests") : "shutter-row alone rests"}>
        {length !== undefined && !isKept && (
          <button type="button" class={now?.enough ? "target main" : "target"} onClick={() => void keepOnce()}>
            {say(now?.enough ? "measure-keep" : "picture-all-the-same")}
          </button>
        )}
        <Files from="camera" class={found !== undefined && found.is !== "card" ? "target main" : "target"} onFiles={onFiles}>
          {say(isKept ? "picture-one-more" : "picture-again")}
        </Files>
      </div>
    </>
  );
}
