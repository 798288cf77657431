import { useEffect, useMemo, useState } from "preact/hooks";
import { isMeasurable, itemNamed, type ToleranceSheet } from "../../../job/index.ts";
import { Link } from "../../parts/link.tsx";
import { useSpeaking } from "../../parts/speaking.ts";
import { NotHere, PhoneFrame } from "../frame.tsx";
import type { JobPart, Taking } from "../job-part.ts";
import { useKeep } from "../keep/index.ts";
import { takePath } from "../paths.ts";
import { useNotReceived } from "../picture/camera.ts";
import { Files } from "../picture/files.tsx";
import { takeIn } from "../picture/seen.tsx";
import { type Chosen, takenAt } from "../picture/what.ts";
import { useTold } from "../told.ts";
import { holdFile } from "./in-hand.ts";
import { PicturesHere } from "./pictures-here.tsx";
import { MeasuredSoFar } from "./so-far.tsx";
import { WithPhoto } from "./with-photo.tsx";

/** A length measured in a picture with a card, beside the tape's reading. */
export function MeasurePage({ job, rest: [id = "", tag] }: JobPart) {
  const told = useTold(job);
  const sheet = told?.now.state.sheet;
  const item = sheet && itemNamed(sheet, id);
  if (told === undefined || sheet === undefined || item === undefined || !isMeasurable(sheet, item)) return <NotHere />;
  return <Measure job={job} item={item} told={told} sheet={sheet} {...(tag === undefined ? {} : { tag })} />;
}

function Measure({ job, item, tag, told, sheet }: Taking & { readonly sheet: ToleranceSheet }) {
  const { say } = useSpeaking();
  const { keep } = useKeep();
  const [notReceived, received] = useNotReceived();
  const [chosen, setChosen] = useState<Chosen>();
  const [coming, setComing] = useState(false);
  const [refused, setRefused] = useState("");
  const place = `measure ${job} ${item.id} ${tag ?? ""}`;
  const pictured = useMemo(() => (tag === undefined ? { item: item.id } : { item: item.id, tag }), [item.id, tag]);
  useEffect(() => {
    void keep.draft<Chosen>(place).then((before) => before !== undefined && setChosen((now) => now ?? before));
  }, [keep, place]);
  const choose = async (next: Chosen): Promise<void> => {
    setChosen(next);
    await keep.keepDraft(place, next);
  };
  const take = async ([file]: readonly File[]): Promise<void> => {
    if (file === undefined) return;
    received();
    setRefused("");
    setComing(true);
    // whatever befalls the phone's store, the page waits for nothing that does not come
    const came = await takeIn(keep, job, file, takenAt(file.lastModified, Date.now())).finally(() => setComing(false));
    if (came === "no room") return setRefused(say("unsent-full"));
    holdFile(came.photo.sha256, file);
    await choose(came);
  };
  const title = told.sayer.title(pictured);
  return (
    <PhoneFrame title={say("measure-title")} back={{ to: takePath(job, item.id, tag), title }}>
      {notReceived && chosen === undefined && (
        <p role="alert" class="stands-out">
          {say("picture-not-received")}
        </p>
      )}
      <p role="alert">{refused}</p>
      {coming && <p role="status">{say("picture-looking")}</p>}
      {chosen === undefined || coming ? (
        <>
          <p class="prompt">{say("measure-how")}</p>
          <p>{say("measure-beside")}</p>
          <p>{say("measure-caution")}</p>
          <PicturesHere told={told} pictured={pictured} onChoose={(photo) => void choose({ photo })} />
          <MeasuredSoFar job={job} told={told} item={item.id} tag={tag} />
          <Link to={takePath(job, item.id, tag)}>{say("picture-back-to-reading")}</Link>
          <div class="shutter-row">
            <Files from="camera" class="target main shutter" onFiles={take}>
              {say("picture-take")}
            </Files>
            <Files from="phone" class="target" onFiles={take}>
              {say("picture-choose")}
            </Files>
          </div>
        </>
      ) : (
        <WithPhoto
          key={chosen.photo.sha256}
          {...{ job, told, sheet, pictured, title, chosen }}
          onFiles={take}
          onKept={() => void keep.keepDraft(place, undefined)}
        />
      )}
    </PhoneFrame>
  );
}
