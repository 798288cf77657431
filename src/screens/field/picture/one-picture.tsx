import type { ComponentChildren } from "preact";
import { useEffect, useState } from "preact/hooks";
import { itemNamed } from "../../../job/index.ts";
import { useSpeaking } from "../../parts/speaking.ts";
import { useBesideStep } from "../cards/beside-step.ts";
import { WentTo } from "../cards/elsewhere.tsx";
import { keepSaid } from "../cards/of-photo.ts";
import type { Taking } from "../job-part.ts";
import { useKeep } from "../keep/index.ts";
import { useNotReceived } from "./camera.ts";
import { ChosenPicture } from "./chosen-picture.tsx";
import { Files } from "./files.tsx";
import { readyToJudge } from "./judging.ts";
import { useKeepPicture } from "./keep-picture.ts";
import { usePictureDraft } from "./picture-draft.ts";
import { AskPosition, usePosition } from "./position.tsx";
import { JudgedText, takeIn } from "./seen.tsx";
import { ShutterRow } from "./shutter-row.tsx";
import { picturesSoFar, SoFar } from "./so-far.tsx";
import { type Judged, type Pictured, takenAt } from "./what.ts";
import { whereOf } from "./where.ts";

interface OnePictureProps extends Pick<Taking, "job" | "told"> {
  readonly pictured: Pictured;
  readonly title: string;
  /** Where the page goes on by itself once the picture is kept; without it, it stays and says so. */
  readonly onKept?: (entry: string) => void;
  /** The other ways, while nothing is in hand. */
  readonly children: ComponentChildren;
}

/** The picture of one thing: taken, looked at by this phone at once, kept; taken again, the first stays as replaced. */
export function OnePicture({ job, told, pictured, title, onKept, children }: OnePictureProps) {
  const { say } = useSpeaking();
  const { keep } = useKeep();
  const today = usePosition();
  const [notReceived, received] = useNotReceived();
  const [draft, change] = usePictureDraft(job, pictured);
  /** `true`: a file came and nothing is known of it yet; then what this phone made of it, while its bytes are still being kept. */
  const [looking, setLooking] = useState<boolean | Judged>(false);
  useEffect(readyToJudge, []);
  const { chosen, before, caption } = draft;
  const step = told.now.state.sheet && itemNamed(told.now.state.sheet, pictured.item)?.step;
  const card = useBesideStep(chosen?.photo, job, step ?? "");
  const whereAt = (taken: number) => whereOf(today.position, taken);
  const keeps = useKeepPicture({ job, told, pictured, draft, change, card, whereAt, onKept });
  const { refused, kept = false, went } = keeps.said;

  const take = async ([file]: readonly File[]): Promise<void> => {
    if (file === undefined) return;
    received();
    keeps.say({ refused: "" });
    setLooking(true);
    // of one taken before, the file knows when; whatever befalls the store, the page waits for nothing that does not come
    const taken = takenAt(file.lastModified, Date.now());
    const where = whereAt(taken);
    const came = await takeIn(keep, job, file, taken, setLooking).finally(() => setLooking(false));
    if (came === "no room") return keeps.say({ refused: say("unsent-full") });
    await keepSaid(keep, came.photo.sha256, "by hand");
    await change({
      chosen: { ...came, ...(where === undefined ? {} : { where }) },
      before: chosen === undefined ? before : [...before, chosen].filter(({ photo }) => photo.sha256 !== came.photo.sha256),
      caption,
    });
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
        <ChosenPicture
          job={job}
          told={told}
          chosen={chosen}
          title={title}
          caption={caption}
          card={card.says}
          onCaption={(words) => void change({ ...draft, caption: words })}
          onGo={keeps.goTo}
          onHere={() => void card.here()}
        >
          {poor && (
            <Files from="phone" class="target" onFiles={take}>
              {say("picture-choose")}
            </Files>
          )}
          {!poor && last !== undefined && (
            <button
              type="button"
              class="target"
              disabled={keeps.busy}
              onClick={() => keeps.finish({ id: last.entry.id, digest: last.entry.digest })}
            >
              {say("picture-keep-instead")}
            </button>
          )}
        </ChosenPicture>
      )}
      {went !== undefined && chosen === undefined && (
        <div role="status">
          <WentTo job={job} went={went} />
        </div>
      )}
      {kept && (
        <p role="status" class="stands-out">
          {say("picture-kept")}
        </p>
      )}
      {chosen === undefined && <AskPosition today={today} why="position-why" />}
      {chosen === undefined && <SoFar job={job} told={told} pictured={pictured} title={title} />}
      {chosen === undefined && children}
      {(chosen === undefined || poor || card.says?.is !== "asks") && (
        <ShutterRow
          stands={chosen === undefined ? "nothing" : poor ? "poor" : "good"}
          others={last !== undefined || kept}
          waits={looking !== false || keeps.busy}
          onFiles={take}
          onKeep={() => keeps.finish()}
        />
      )}
    </>
  );
}
