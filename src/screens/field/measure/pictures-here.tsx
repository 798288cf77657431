import { useEffect, useState } from "preact/hooks";
import { Section } from "../../parts/section.tsx";
import { type OwnPhoto, useKeep } from "../keep/index.ts";
import { Thumb } from "../picture/in-hand.tsx";
import { picturesSoFar } from "../picture/so-far.tsx";
import type { KeptPhoto, Pictured } from "../picture/what.ts";
import type { ToldOnPhone } from "../told.ts";
import { fileOf } from "./in-hand.ts";

interface PicturesHereProps {
  readonly told: ToldOnPhone;
  readonly pictured: Pictured;
  readonly onChoose: (photo: KeptPhoto) => void;
}

/** Pictures of this reading whose own pixels this phone still has: what the office has already is gone from here. */
export function PicturesHere({ told, pictured, onChoose }: PicturesHereProps) {
  const { keep, state } = useKeep();
  const [here, setHere] = useState<readonly OwnPhoto[]>([]);
  const names = picturesSoFar(told, pictured).map(({ what }) => String(what.photo));
  const known = names.join(" ");
  useEffect(() => {
    let isHere = true;
    const own = state.photos.filter(({ sha256 }) => known.split(" ").includes(sha256));
    void Promise.all(own.map(async (photo) => ((await fileOf(keep, photo)) === undefined ? [] : [photo]))).then((found) => {
      if (isHere) setHere(found.flat());
    });
    return () => {
      isHere = false;
    };
  }, [keep, state.photos, known]);
  if (here.length === 0) return null;
  return (
    <Section title="measure-before">
      <div class="thumbs">
        {here.map((photo) => (
          <Thumb key={photo.sha256} photo={photo} pressed={false} onPress={() => onChoose(photo)} />
        ))}
      </div>
    </Section>
  );
}
