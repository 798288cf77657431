import { useCallback, useEffect, useRef, useState } from "preact/hooks";
import type { Instance } from "../../../job/index.ts";
import { useSpeaking } from "../../parts/speaking.ts";
import { type OwnPhoto, useKeep } from "../keep/index.ts";
import { useEnterPicture } from "../picture/enter-picture.ts";
import { picturePlaces } from "../picture/places.ts";
import { judgedWhenSeen } from "../picture/seen.tsx";
import type { ToldOnPhone } from "../told.ts";
import { dayHere } from "../use-enter.ts";
import { cardsIn, keepSaid, saidOf } from "./of-photo.ts";
import { readCards } from "./read-cards.ts";
import { type CardSays, type WhereTo, whereTo } from "./where-to.ts";

/** What is known of a photo that waits. */
interface Known {
  readonly cards: readonly CardSays[];
  /** It may go to its place by itself: a person could read it, none has said where it belongs, and its place was the only one. */
  readonly mayGo: boolean;
}

const noCard: Known = { cards: [], mayGo: false };
/** So long somebody waits for what the cards say of the photo in his hand (own). */
const PATIENCE_MS = 6_000;

interface PutByCard {
  readonly day: string;
  readonly entries: readonly string[];
}

export interface Filing {
  /** What to do with a photo; undefined while it is looked at or goes to its place. */
  readonly of: (photo: OwnPhoto) => WhereTo | undefined;
  /** Entries of today that came to their place by a card. */
  readonly put: readonly string[];
  /** Whatever the cards in it say, it belongs to this job. */
  readonly here: (photo: OwnPhoto) => void;
}

/**
 * Looks for cards in the photos that wait, the one in hand first, and puts those with one card and one place to it. What a person has
 * in hand with its places before him stays where it is.
 */
export function useFiling(job: string, told: ToldOnPhone | undefined, waiting: readonly OwnPhoto[], inHand: OwnPhoto | undefined): Filing {
  const { keep, state } = useKeep();
  const { session } = useSpeaking();
  const enterPicture = useEnterPicture(job);
  const [known, setKnown] = useState<ReadonlyMap<string, Known>>(new Map());
  const [put, setPut] = useState<readonly string[]>([]);
  const [, setTurns] = useState(0);
  const busy = useRef(false);
  /** Photos that somebody has had before him with their places. */
  const shown = useRef(new Set<string>());
  const place = `put-by-card ${job}`;
  const putToday = useCallback(async (): Promise<readonly string[]> => {
    const before = await keep.draft<PutByCard>(place);
    return before?.day === dayHere(Date.now()) ? before.entries : [];
  }, [keep, place]);
  useEffect(() => void putToday().then(setPut), [putToday]);

  const somebody = state.today?.day === dayHere(keep.now());
  const to = (cards: readonly CardSays[]): WhereTo => (told === undefined ? { is: "as usual" } : whereTo(cards, job, picturePlaces(told)));
  const goesTo = ({ sha256 }: OwnPhoto): Instance | undefined => {
    const one = known.get(sha256);
    if (one?.mayGo !== true || !somebody || shown.current.has(sha256)) return undefined;
    const where = to(one.cards);
    return where.is === "here" ? where.place : undefined;
  };
  const note = (sha256: string, one: Known): void => setKnown((before) => new Map(before).set(sha256, one));
  const noteFirst = (sha256: string, one: Known): void =>
    setKnown((before) => (before.has(sha256) ? before : new Map(before).set(sha256, one)));

  const read = async (photo: OwnPhoto): Promise<void> => {
    const { sha256 } = photo;
    const [judged, said, seen] = [await judgedWhenSeen(keep, sha256), await saidOf(keep, sha256), await cardsIn(keep, photo)];
    const cards = said === "here" ? [] : await readCards(keep, session.company, seen);
    // what came too late changes nothing any more
    noteFirst(sha256, { cards, mayGo: judged?.verdict === "readable" && said === undefined && to(cards).is === "here" });
  };
  const enterOnce = async (photo: OwnPhoto, { item, tag }: Instance): Promise<string | undefined> => {
    // another page of this phone may be about to put it there too
    if (!(await keep.isLoose(photo.sha256))) return undefined;
    const judged = await judgedWhenSeen(keep, photo.sha256);
    const pictured = tag === undefined ? { item: item.id } : { item: item.id, tag };
    const entered = await enterPicture(pictured, { photo, ...(judged === undefined ? {} : { judged }) }, "");
    return entered !== "lost" && entered?.is === "kept" ? entered.own.id : undefined;
  };
  const file = async (photo: OwnPhoto, instance: Instance): Promise<void> => {
    const entry = await navigator.locks.request("asburied-by-card", () => enterOnce(photo, instance));
    if (entry === undefined) return note(photo.sha256, { cards: known.get(photo.sha256)?.cards ?? [], mayGo: false });
    const entries = [...(await putToday()), entry];
    setPut(entries);
    await keep.keepDraft(place, { day: dayHere(Date.now()), entries } satisfies PutByCard);
  };

  const handed = inHand?.sha256;
  useEffect(() => {
    if (handed === undefined) return;
    const timer = setTimeout(() => noteFirst(handed, noCard), PATIENCE_MS);
    return () => clearTimeout(timer);
  }, [handed]);

  useEffect(() => {
    if (told === undefined || busy.current) return;
    if (inHand !== undefined && known.has(inHand.sha256) && goesTo(inHand) === undefined) shown.current.add(inHand.sha256);
    const goes = waiting.find((photo) => goesTo(photo) !== undefined);
    const unread = [inHand, ...waiting].find((photo) => photo !== undefined && !known.has(photo.sha256));
    const instance = goes && goesTo(goes);
    const work = goes !== undefined && instance !== undefined ? file(goes, instance) : unread && read(unread);
    if (work === undefined) return;
    busy.current = true;
    // drawn with what is new first: the next one is put by the places that are open then
    void work.finally(() => {
      busy.current = false;
      setTurns((turns) => turns + 1);
    });
  });

  return {
    of: (photo) => {
      const one = known.get(photo.sha256);
      return one === undefined || goesTo(photo) !== undefined ? undefined : to(one.cards);
    },
    put,
    here: ({ sha256 }) => {
      void keepSaid(keep, sha256, "here");
      note(sha256, noCard);
    },
  };
}
