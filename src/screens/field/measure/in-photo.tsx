import { useEffect, useMemo, useState } from "preact/hooks";
import {
  itemNamed,
  type PhotoMeasured,
  photoMeasured,
  photoNeeds,
  photoPlacing,
  type ToleranceSheet,
  type Typed,
  type Whats,
} from "../../../job/index.ts";
import type { Outcome } from "../../../outcome/index.ts";
import { useSpeaking } from "../../parts/speaking.ts";
import { useKeep } from "../keep/index.ts";
import type { Pictured } from "../picture/what.ts";
import type { ToldOnPhone } from "../told.ts";
import type { CardInPhoto } from "./card-in-photo.ts";
import { Controls } from "./controls.tsx";
import { type KeptLens, keptLens, lensOf } from "./lens-kept.ts";
import { Advice, Length } from "./result.tsx";
import { Ruler } from "./ruler.tsx";
import { keptRuler } from "./ruler-kept.ts";
import { advised } from "./says.ts";
import { snapped } from "./snap.ts";
import { type Ends, Stage, type Which } from "./stage.tsx";
import { type End, inside, SET_WITHIN, type Spot } from "./view.ts";
import { measuredWhat } from "./what.ts";

export interface MeasuredNow {
  readonly what: Whats["photo-measured"];
  readonly outcome: Outcome<PhotoMeasured>;
  readonly enough: boolean;
}

interface InPhotoProps {
  readonly told: ToldOnPhone;
  readonly sheet: ToleranceSheet;
  readonly pictured: Pictured;
  readonly photo: string;
  readonly title: string;
  readonly picture: ImageBitmap;
  readonly card: Extract<CardInPhoto, { readonly is: "card" }>;
  /** What is measured and shown now; undefined while an end is missing. */
  readonly onMeasured: (now: MeasuredNow | undefined) => void;
}

/** Between two workings-out while a finger moves, ms. */
const PAUSE_MS = 60;

/** Two ends in a picture with a card, and the length between them. */
export function InPhoto({ told, sheet, pictured, photo, title, picture, card, onMeasured }: InPhotoProps) {
  const { say } = useSpeaking();
  const { keep } = useKeep();
  const [ends, setEnds] = useState<Ends>([undefined, undefined]);
  const [chosen, setChosen] = useState<Which>(0);
  const [near, setNear] = useState(false);
  const [said, setSaid] = useState("");
  const [lens, setLens] = useState<KeptLens>();
  /** `null`: not read from the phone's store yet. */
  const [ruler, setRuler] = useState<Typed | null | undefined>(null);
  const [now, setNow] = useState<MeasuredNow>();
  const needed = photoNeeds(sheet, pictured.item);
  const own = itemNamed(sheet, pictured.item);
  const placing = own === undefined ? 0 : photoPlacing(sheet, own);
  const { item, tag } = pictured;
  useEffect(() => void keptLens(keep).then(setLens), [keep]);
  useEffect(() => void keptRuler(keep, card.paper).then(setRuler), [keep, card.paper]);
  const what = useMemo(() => {
    const [from, to] = ends;
    if (from === undefined || to === undefined || ruler === null) return undefined;
    const about = { item, ...(tag === undefined ? {} : { tag }) };
    return { ends: [from, to] as const, words: measuredWhat(about, { photo, card, ends: [from, to], ruler, lens: lensOf(lens, card) }) };
  }, [ends, ruler, lens, card, photo, item, tag]);
  useEffect(() => {
    if (what === undefined) {
      setNow(undefined);
      return onMeasured(undefined);
    }
    const timer = setTimeout(() => {
      const outcome = photoMeasured(what.words, placing);
      const enough = outcome.ok && advised(outcome.value, what.ends, needed).enough;
      const next = { what: what.words, outcome, enough };
      setNow(next);
      onMeasured(next);
    }, PAUSE_MS);
    return () => clearTimeout(timer);
  }, [what, needed, placing, onMeasured]);
  const move = (which: Which, end: End): void => {
    setSaid("");
    setEnds(([from, to]) => (which === 0 ? [end, to] : [from, end]));
  };
  const moveBy = ({ x, y }: Spot): void => {
    const end = ends[chosen];
    // near, each pixel is seen; of the whole picture nobody sees by how much it was moved
    if (end !== undefined) move(chosen, { ...inside(picture, { x: end.x + x, y: end.y + y }), u: near ? SET_WITHIN : end.u });
  };
  const choose = (which: Which): void => {
    setChosen(which);
    setNear(true);
    if (ends[which] === undefined) move(which, { x: picture.width / 2, y: picture.height / 2, u: picture.width / 4 });
  };
  const snap = (): void => {
    const [from, to] = ends;
    if (from === undefined || to === undefined) return;
    const found = snapped(picture, [from, to]);
    setEnds([found[0] ?? from, found[1] ?? to]);
    const count = found.filter((one) => one !== undefined).length;
    // of the whole picture nobody sees which edge it is
    if (count > 0) setNear(true);
    if (count === 1) setSaid(say("measure-snapped-one", { number: found[0] === undefined ? 2 : 1 }));
    else setSaid(say(count === 2 ? "measure-snapped-both" : "measure-snapped-none"));
  };
  const [from, to] = ends;
  const isRough = [from, to].some((end) => (end?.u ?? 0) > SET_WITHIN);
  const asks =
    from === undefined ? "measure-tap-first" : to === undefined ? "measure-tap-second" : isRough ? "measure-set-exactly" : "measure-keys";
  return (
    <>
      <p role="status" class="measure-asks">
        {said === "" ? say(asks) : said}
      </p>
      <Stage
        picture={picture}
        title={`${say("measure-picture")}: ${title}`}
        ends={ends}
        chosen={chosen}
        near={near}
        onMove={move}
        onChoose={setChosen}
      />
      {now !== undefined && <Length measured={now.outcome} sayer={told.sayer} />}
      <Controls
        chosen={chosen}
        near={near}
        set={[from !== undefined, to !== undefined]}
        onWhole={() => setNear(false)}
        onNear={choose}
        onMove={moveBy}
        onSnap={snap}
      />
      {now?.outcome.ok && from !== undefined && to !== undefined && (
        <Advice measured={now.outcome.value} ends={[from, to]} needed={needed} sayer={told.sayer} />
      )}
      {card.codes.length < 4 && <p>{say("measure-card-part", { count: card.codes.length })}</p>}
      {ruler !== null && <Ruler paper={card.paper} kept={ruler} sayer={told.sayer} onKept={setRuler} />}
    </>
  );
}
