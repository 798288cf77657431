import type { Instance } from "../../../job/index.ts";
import { clockText, useSpeaking } from "../../parts/speaking.ts";
import type { OwnPhoto } from "../keep/index.ts";
import type { ToldOnPhone } from "../told.ts";
import { NotForThisJob } from "./not-for-this-job.tsx";
import { picturePlaces, placeKey } from "./places.ts";
import { JudgedText, SmallPhoto, useSeen } from "./seen.tsx";

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

/** One of those that wait, small, to be taken in hand. */
export function Thumb({ photo, pressed, onPress }: { readonly photo: OwnPhoto; readonly pressed: boolean; readonly onPress: () => void }) {
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

interface InHandProps {
  readonly told: ToldOnPhone;
  readonly photo: OwnPhoto;
  readonly number: number;
  readonly all: number;
  readonly onPut: (place: Instance) => void;
}

/** One photo, large, and the places that it can be put to. */
export function InHand({ told, photo, number, all, onPut }: InHandProps) {
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
