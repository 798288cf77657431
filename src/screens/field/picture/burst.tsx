import { useState } from "preact/hooks";
import type { Instance } from "../../../job/index.ts";
import { Link } from "../../parts/link.tsx";
import { jobPath } from "../../parts/place.ts";
import { clockText, useSpeaking } from "../../parts/speaking.ts";
import { NotHere, PhoneFrame } from "../frame.tsx";
import type { JobPart } from "../job-part.ts";
import { type OwnPhoto, useKeep } from "../keep/index.ts";
import { movePath } from "../paths.ts";
import { type ToldOnPhone, useTold } from "../told.ts";
import { useNotReceived } from "./camera.ts";
import { useEnterPicture } from "./enter-picture.ts";
import { Files } from "./files.tsx";
import { NotForThisJob } from "./not-for-this-job.tsx";
import { picturePlaces, placeKey } from "./places.ts";
import { JudgedText, judgedOf, SmallPhoto, takeIn, useSeen } from "./seen.tsx";
import { takenAt } from "./what.ts";

/** Photos of this job that wait for their place, in the order in which they were taken. */
const waitingFor = (photos: readonly OwnPhoto[], job: string): readonly OwnPhoto[] =>
  photos.filter((one) => one.job === job && one.loose === true && one.standing !== "lost").sort((a, b) => a.taken - b.taken);

interface PlacesProps {
  readonly places: readonly Instance[];
  readonly told: ToldOnPhone;
  readonly onPut: (place: Instance) => void;
}

function PlaceButtons({ places, told: { now, sayer }, onPut }: PlacesProps) {
  const titles = new Map((now.state.sheet?.steps ?? []).map(({ id, title }) => [id, title]));
  return (
    <ul class="choices">
      {places.map((place) => (
        <li key={placeKey(place)}>
          <button type="button" class="target" onClick={() => onPut(place)}>
            <span class="step-name">
              <b>{sayer.title(place.tag === undefined ? { item: place.item.id } : { item: place.item.id, tag: place.tag })}</b>
              <span>{sayer.words(titles.get(place.item.step))}</span>
            </span>
          </button>
        </li>
      ))}
    </ul>
  );
}

function Thumb({ photo, pressed, onPress }: { readonly photo: OwnPhoto; readonly pressed: boolean; readonly onPress: () => void }) {
  const { say, session } = useSpeaking();
  const seen = useSeen(photo, false);
  const time = clockText(photo.taken, session.language);
  return (
    <button type="button" class="thumb" aria-pressed={pressed} onClick={onPress}>
      <SmallPhoto seen={seen} title={say("burst-taken", { time })} />
      <span>{time}</span>
    </button>
  );
}

interface OneProps {
  readonly told: ToldOnPhone;
  readonly photo: OwnPhoto;
  readonly number: number;
  readonly all: number;
  readonly onPut: (place: Instance) => void;
}

/** One photo, large, and the places that it can be put to. */
function One({ told, photo, number, all, onPut }: OneProps) {
  const { say, session } = useSpeaking();
  const seen = useSeen(photo, true);
  const { open, taken } = picturePlaces(told);
  const title = say("burst-one", { number, all, time: clockText(photo.taken, session.language) });
  return (
    <>
      <div class="in-hand">
        <p>
          <b>{title}</b>
        </p>
        <SmallPhoto seen={seen} title={title} />
      </div>
      {/* only when he sees it: nothing moves under the thumb, nothing is put unseen */}
      {seen.judged !== undefined && (
        <>
          {seen.judged.verdict === "unreadable" && <JudgedText judged={seen.judged} />}
          <h2>{say("burst-what")}</h2>
          <PlaceButtons places={open} told={told} onPut={onPut} />
          <NotForThisJob photo={photo} />
          {taken.length > 0 && (
            <details>
              <summary class="target">{say("burst-taken-already")}</summary>
              <PlaceButtons places={taken} told={told} onPut={onPut} />
            </details>
          )}
        </>
      )}
    </>
  );
}

interface Put {
  readonly entry: string;
  readonly title: string;
}

/** Pictures that were taken together with the phone's own camera: chosen in one go, kept with their times, put one after the other to what they show. */
export function BurstPage({ job }: JobPart) {
  const { say } = useSpeaking();
  const { keep, state } = useKeep();
  const told = useTold(job);
  const enterPicture = useEnterPicture(job);
  const [notReceived, received] = useNotReceived();
  const [keeping, setKeeping] = useState<{ readonly number: number; readonly all: number }>();
  const [picked, setPicked] = useState<string>();
  const [put, setPut] = useState<Put>();
  const [refused, setRefused] = useState("");
  if (told === undefined) return <NotHere />;
  const waiting = waitingFor(state.photos, job);
  const inHand = waiting.find(({ sha256 }) => sha256 === picked) ?? waiting[0];

  const choose = async (files: readonly File[]): Promise<void> => {
    if (files.length === 0) return;
    received();
    setRefused("");
    const now = Date.now();
    // one after the other: an old phone has no room for forty photos at once
    for (const [index, file] of files.entries()) {
      setKeeping({ number: index + 1, all: files.length });
      if ((await takeIn(keep, job, file, takenAt(file.lastModified, now))) === "no room") {
        setRefused(say("burst-no-room", { number: index, all: files.length }));
        break;
      }
    }
    setKeeping(undefined);
  };

  const putTo = async (photo: OwnPhoto, { item, tag }: Instance): Promise<void> => {
    const pictured = tag === undefined ? { item: item.id } : { item: item.id, tag };
    const judged = await judgedOf(keep, photo.sha256);
    const entered = await enterPicture(pictured, { photo, ...(judged === undefined ? {} : { judged }) }, "");
    if (entered === "lost") return setRefused(say("picture-lost"));
    if (entered?.is === "no room") return setRefused(say("unsent-full"));
    if (entered?.is === "refused") return setRefused(told.sayer.refusal(entered.refusal));
    if (entered?.is !== "kept") return;
    setRefused("");
    setPut({ entry: entered.own.id, title: told.sayer.title(pictured) });
    setPicked(undefined);
    scrollTo(0, 0);
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
        {put !== undefined && (
          <p class="put-to">
            {say("burst-put", { title: put.title })} <Link to={movePath(job, put.entry)}>{say("reading-move")}</Link>
          </p>
        )}
      </div>
      {inHand === undefined ? (
        <p>{say("burst-how")}</p>
      ) : (
        <One
          key={inHand.sha256}
          told={told}
          photo={inHand}
          number={waiting.indexOf(inHand) + 1}
          all={waiting.length}
          onPut={(place) => void putTo(inHand, place)}
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
