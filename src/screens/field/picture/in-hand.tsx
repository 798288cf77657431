import type { Instance } from "../../../job/index.ts";
import { clockText, useSpeaking } from "../../parts/speaking.ts";
import { CardAsks, CardSaysLine } from "../cards/elsewhere.tsx";
import type { Elsewhere, WhereTo } from "../cards/where-to.ts";
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
  readonly job: string;
  readonly told: ToldOnPhone;
  readonly photo: OwnPhoto;
  readonly number: number;
  readonly all: number;
  /** What the cards in it say; absent while they are looked for. */
  readonly where: WhereTo | undefined;
  readonly onPut: (place: Instance) => void;
  readonly onGo: (to: Elsewhere) => void;
  readonly onHere: () => void;
}

type Found = Pick<InHandProps, "job" | "told" | "photo" | "onPut" | "onGo" | "onHere"> & { readonly where: WhereTo };

/** Every place that it can be put to: those that its cards name first. */
function Places({ told, photo, where, onPut }: Pick<Found, "told" | "photo" | "where" | "onPut">) {
  const { say } = useSpeaking();
  const all = picturePlaces(told);
  const first = where.is === "here" ? [where.place] : where.is === "asks" ? where.first : [];
  const keys = new Set(first.map(placeKey));
  const there = new Set(all.taken.map(placeKey));
  const rest = (places: readonly Instance[]): readonly Instance[] => places.filter((place) => !keys.has(placeKey(place)));
  const [open, taken] = [rest(all.open), rest(all.taken)];
  return (
    <>
      {first.length > 0 && (
        <>
          <h2>{say(where.is === "asks" && where.several ? "card-first-several" : "card-first")}</h2>
          {first.every((place) => there.has(placeKey(place))) && <p>{say("card-first-taken")}</p>}
          <PlaceButtons places={first} told={told} onPut={onPut} />
        </>
      )}
      {open.length > 0 && (
        <>
          <h2>{say(first.length > 0 ? "card-else" : "burst-what")}</h2>
          <PlaceButtons places={open} told={told} onPut={onPut} />
        </>
      )}
      <NotForThisJob photo={photo} />
      {taken.length > 0 && (
        <details>
          <summary class="target">{say("burst-taken-already")}</summary>
          <PlaceButtons places={taken} told={told} onPut={onPut} />
        </details>
      )}
    </>
  );
}

/** What its cards say, and where it can be put: a card of another job asks before anything is put. */
function ToPut({ job, told, photo, where, onPut, onGo, onHere }: Found) {
  const elsewhere = where.is === "asks" ? where.elsewhere : [];
  return (
    <>
      {where.is === "as usual" && where.line !== undefined && <CardSaysLine line={where.line} />}
      {where.is === "asks" && elsewhere.length > 0 && (
        <CardAsks job={job} told={told} several={where.several} elsewhere={elsewhere} onGo={onGo} onHere={onHere} />
      )}
      {(where.is !== "asks" || elsewhere.length === 0 || where.first.length > 0) && (
        <Places told={told} photo={photo} where={where} onPut={onPut} />
      )}
    </>
  );
}

/** One photo, large, and the places that it can be put to. */
export function InHand({ number, all, where, ...found }: InHandProps) {
  const { photo } = found;
  const { say, session } = useSpeaking();
  const seen = useSeen(photo, true);
  const title = say("burst-one", { number, all, time: clockText(photo.taken, session.language) });
  return (
    <>
      <div class="in-hand">
        <p>
          <b>{title}</b>
        </p>
        <SmallPhoto seen={seen} title={title} />
      </div>
      {seen.judged?.verdict === "unreadable" && <JudgedText judged={seen.judged} />}
      {/* only when he sees it and it stays: nothing moves under the thumb, nothing is put unseen */}
      {seen.judged !== undefined && where === undefined && <p role="status">{say("card-looking")}</p>}
      {seen.judged !== undefined && where !== undefined && <ToPut {...found} where={where} />}
    </>
  );
}
