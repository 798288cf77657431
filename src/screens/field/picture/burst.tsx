import { useState } from "preact/hooks";
import type { Instance } from "../../../job/index.ts";
import { jobPath } from "../../parts/place.ts";
import { useSpeaking } from "../../parts/speaking.ts";
import { type Went, WentTo } from "../cards/elsewhere.tsx";
import { useFiling } from "../cards/filing.ts";
import { keepSaid } from "../cards/of-photo.ts";
import { PutByCard } from "../cards/put-by-card.tsx";
import type { Elsewhere } from "../cards/where-to.ts";
import { NotHere, PhoneFrame } from "../frame.tsx";
import type { JobPart } from "../job-part.ts";
import { type OwnPhoto, useKeep } from "../keep/index.ts";
import { useTold } from "../told.ts";
import { useNotReceived } from "./camera.ts";
import { useEnterPicture } from "./enter-picture.ts";
import { Files } from "./files.tsx";
import { InHand, Thumb } from "./in-hand.tsx";
import { judgedOf, takeIn } from "./seen.tsx";
import { takenAt } from "./what.ts";

/** Photos of this job that wait for their place, in the order in which they were taken. */
const waitingFor = (photos: readonly OwnPhoto[], job: string): readonly OwnPhoto[] =>
  photos.filter((one) => one.job === job && one.loose === true && one.standing !== "lost").sort((a, b) => a.taken - b.taken);

/** Pictures that were taken together with the phone's own camera: chosen in one go, kept with their times, put one after the other to what they show. */
export function BurstPage({ job, rest: [handed] }: JobPart) {
  const { say } = useSpeaking();
  const { keep, state } = useKeep();
  const told = useTold(job);
  const enterPicture = useEnterPicture(job);
  const [notReceived, received] = useNotReceived();
  const [keeping, setKeeping] = useState<{ readonly number: number; readonly all: number }>();
  const [picked, setPicked] = useState(handed);
  const [went, setWent] = useState<Went>();
  const [refused, setRefused] = useState("");
  const waiting = waitingFor(state.photos, job);
  const inHand = waiting.find(({ sha256 }) => sha256 === picked) ?? waiting[0];
  const filing = useFiling(job, told, waiting, inHand);
  if (told === undefined) return <NotHere />;

  const choose = async (files: readonly File[]): Promise<void> => {
    if (files.length === 0) return;
    received();
    setRefused("");
    const now = Date.now();
    // one after the other: an old phone has no room for forty photos at once
    try {
      for (const [index, file] of files.entries()) {
        setKeeping({ number: index + 1, all: files.length });
        if ((await takeIn(keep, job, file, takenAt(file.lastModified, now))) === "no room") {
          setRefused(say("burst-no-room", { number: index, all: files.length }));
          break;
        }
      }
    } finally {
      setKeeping(undefined);
    }
  };

  const putTo = async (photo: OwnPhoto, { item, tag }: Instance): Promise<void> => {
    const pictured = tag === undefined ? { item: item.id } : { item: item.id, tag };
    const judged = await judgedOf(keep, photo.sha256);
    const entered = await enterPicture(pictured, { photo, ...(judged === undefined ? {} : { judged }) }, "");
    if (entered === "lost") return setRefused(say("picture-lost"));
    if (entered?.is === "no room") return setRefused(say("unsent-full"));
    if (entered?.is === "refused") return setRefused(told.sayer.refusal(entered.refusal));
    if (entered?.is !== "kept") return;
    gone({ is: "put", entry: entered.own.id, title: told.sayer.title(pictured) });
  };

  const gone = (to: Went): void => {
    setRefused("");
    setWent(to);
    setPicked(undefined);
    scrollTo(0, 0);
  };

  const goTo = async ({ sha256 }: OwnPhoto, { job: other }: Elsewhere): Promise<void> => {
    await keepSaid(keep, sha256, undefined);
    await keep.moveLoose(sha256, other);
    gone({ is: "waits", job: other, photo: sha256 });
  };

  return (
    <PhoneFrame title={say("burst-title")} back={{ to: jobPath(job), title: told.now.view.title }}>
      {notReceived && (
        <p role="alert" class="stands-out">
          {say("burst-not-received")}
        </p>
      )}
      <p role="alert">{refused}</p>
      <div role="status">
        {keeping !== undefined && <p>{say("burst-keeping", { ...keeping })}</p>}
        {went !== undefined && <WentTo job={job} went={went} />}
      </div>
      <PutByCard job={job} told={told} entries={filing.put} />
      {inHand === undefined ? (
        <p>{say("burst-how")}</p>
      ) : (
        <InHand
          key={inHand.sha256}
          job={job}
          told={told}
          photo={inHand}
          number={waiting.indexOf(inHand) + 1}
          all={waiting.length}
          where={filing.of(inHand)}
          onPut={(place) => void putTo(inHand, place)}
          onGo={(to) => void goTo(inHand, to)}
          onHere={() => filing.here(inHand)}
        />
      )}
      {waiting.length > 1 && (
        <details>
          <summary class="target">{say("burst-all", { count: waiting.length })}</summary>
          <div class="thumbs">
            {waiting.map((photo) => (
              <Thumb
                key={photo.sha256}
                photo={photo}
                pressed={photo === inHand}
                onPress={() => {
                  setPicked(photo.sha256);
                  scrollTo(0, 0);
                }}
              />
            ))}
          </div>
        </details>
      )}
      <div class={inHand === undefined ? "shutter-row alone" : "alone"}>
        <Files from="phone" several={true} class={inHand === undefined ? "target main shutter" : "target"} onFiles={choose}>
          {say(inHand === undefined ? "burst-choose" : "burst-choose-more")}
        </Files>
      </div>
    </PhoneFrame>
  );
}
