import { useEffect, useRef, useState } from "preact/hooks";
import { momentHere, useSpeaking } from "../../parts/speaking.ts";
import { findCards } from "../cards/find.ts";
import { PhoneFrame } from "../frame.tsx";
import { photoOf, useKeep } from "../keep/index.ts";
import { personPath } from "../paths.ts";
import { Files } from "../picture/files.tsx";
import { edgesOf, type KeptLens, keepLens, keptLens } from "./lens-kept.ts";
import { isGood, judgedForLens, LEAST_PHOTOS, type LensPhoto, lensBy, WELL_KNOWN } from "./lens-photos.ts";

/** Millionths as a percentage with two decimals, a doubt rounded up. */
const percent = (millionths: number): string => (millionths / 10_000).toFixed(2);
const percentUp = (millionths: number): string => (Math.ceil(millionths / 100) / 100).toFixed(2);

/** How this phone's lens bends lines, from a few photos of a flat card; kept on this phone until it is thrown away. */
export function LensPage() {
  const { say, session } = useSpeaking();
  const { keep } = useKeep();
  const [kept, setKept] = useState<KeptLens>();
  const [photos, setPhotos] = useState<readonly LensPhoto[]>([]);
  const [looking, setLooking] = useState<{ readonly number: number; readonly all: number }>();
  const here = useRef(true);
  useEffect(() => {
    void keptLens(keep).then(setKept);
    return () => {
      here.current = false;
    };
  }, [keep]);
  const look = async (files: readonly File[]): Promise<void> => {
    let all = photos;
    for (const [i, file] of files.entries()) {
      setLooking({ number: i + 1, all: files.length });
      const { sha256 } = await photoOf(file, file.lastModified);
      all = [...all, judgedForLens(sha256, await findCards(file), all)];
      if (!here.current) return;
      setPhotos(all);
    }
    setLooking(undefined);
  };
  const good = photos.filter(isGood);
  const lens = lensBy(photos);
  const keepIt = async (): Promise<void> => {
    const [first] = good;
    if (lens === undefined || first === undefined) return;
    const next: KeptLens = { ...lens, ...edgesOf(first), at: Date.now(), photos: good.length };
    await keepLens(keep, next);
    setKept(next);
    setPhotos([]);
  };
  const throwAway = async (): Promise<void> => {
    await keepLens(keep, undefined);
    setKept(undefined);
  };
  return (
    <PhoneFrame title={say("lens-title")} back={{ to: personPath, title: say("phone-who") }}>
      <section>
        {kept === undefined ? (
          <p role="status">{say("lens-none")}</p>
        ) : (
          <>
            <p role="status" class="stands-out">
              {say("lens-kept", {
                time: momentHere(kept.at, session.language),
                photos: kept.photos,
                long: kept.long,
                short: kept.short,
                distortion: percent(kept.distortion),
                within: percentUp(kept.within),
              })}
            </p>
            <p>{say("lens-used")}</p>
            <button type="button" class="target" onClick={() => void throwAway()}>
              {say("lens-throw")}
            </button>
          </>
        )}
      </section>
      <p>{say("lens-how")}</p>
      <p>{say("lens-take")}</p>
      {photos.length > 0 && (
        <ol class="lens-photos">
          {photos.map((photo, i) => (
            <li key={`${i} ${photo.sha256}`}>
              <b>{say("lens-one", { number: i + 1 })}</b> {say(`lens-${photo.is}`)}
            </li>
          ))}
        </ol>
      )}
      {looking !== undefined && <p role="status">{say("lens-looking", looking)}</p>}
      {photos.length > 0 && looking === undefined && (
        <div role="status">
          {lens === undefined ? (
            <p>{say("lens-more", { count: Math.max(1, LEAST_PHOTOS - good.length) })}</p>
          ) : (
            <>
              <p class="call-out">{say("lens-tells", { within: percentUp(lens.within), count: good.length })}</p>
              {lens.within > WELL_KNOWN && <p>{say("lens-surer")}</p>}
            </>
          )}
        </div>
      )}
      <div class={lens === undefined ? "shutter-row alone" : "shutter-row"}>
        {lens !== undefined && looking === undefined && (
          <button type="button" class="target main" onClick={() => void keepIt()}>
            {say("lens-keep")}
          </button>
        )}
        <Files from="phone" several class={lens === undefined ? "target main" : "target"} onFiles={look}>
          {say("lens-choose")}
        </Files>
      </div>
    </PhoneFrame>
  );
}
