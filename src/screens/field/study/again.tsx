import { useEffect, useState } from "preact/hooks";
import { askedOf, itemNamed, type ReadAgain } from "../../../job/index.ts";
import { readQuantity } from "../../../reading/index.ts";
import { Link } from "../../parts/link.tsx";
import { jobPath } from "../../parts/place.ts";
import { useSpeaking } from "../../parts/speaking.ts";
import { counted } from "../../parts/words/index.ts";
import { NotHere, PhoneFrame } from "../frame.tsx";
import type { JobPart } from "../job-part.ts";
import { useKeep } from "../keep/index.ts";
import { TapeOrText } from "../reading/tape-or-text.tsx";
import { type ToldOnPhone, useTold } from "../told.ts";
import { againDue, leaveIt } from "./again-due.ts";
import { Choose } from "./choose.tsx";

/** Somebody else reads again what holds a covering: one place after the other, and nothing on the page tells what was read first. */
export function AgainPage({ job, rest: [covering = ""] }: JobPart) {
  const { say, go } = useSpeaking();
  const { keep, state } = useKeep();
  const told = useTold(job);
  const [reader, setReader] = useState<string>();
  if (told === undefined) return <NotHere />;
  const due = againDue(job, told, keep.now(), covering);
  const own = due.filter(({ notBy }) => reader === undefined || notBy !== reader);
  const [next] = own;
  const readers = state.people.filter(({ person }) => due.some(({ notBy }) => notBy !== person));
  return (
    <PhoneFrame title={say("again-title")} back={{ to: jobPath(job), title: told.now.view.title }}>
      {next === undefined && (
        <>
          <p role="status">{say("again-done")}</p>
          <Link to={jobPath(job)} class="target main">
            {say("again-to-job")}
          </Link>
        </>
      )}
      {next !== undefined && reader === undefined && (
        <>
          <p>{say("again-why")}</p>
          <Choose
            legend={say("again-who")}
            of={readers.map(({ person, name }) => ({ id: person, title: { en: name } }))}
            chosen={[]}
            onChoose={setReader}
          />
          <button type="button" class="target" onClick={() => void leaveIt(keep, job, covering).then(() => go(jobPath(job)))}>
            {say("again-nobody")}
          </button>
        </>
      )}
      {next !== undefined && reader !== undefined && (
        <Next key={next.reading} job={job} told={told} reader={reader} next={next} left={own.length} />
      )}
    </PhoneFrame>
  );
}

interface NextProps {
  readonly job: string;
  readonly told: ToldOnPhone;
  readonly reader: string;
  readonly next: ReadAgain;
  readonly left: number;
}

/** One place, as it is entered anywhere else, without what was entered there before. */
function Next({ job, told, reader, next, left }: NextProps) {
  const { say, session } = useSpeaking();
  const { keep, state } = useKeep();
  const { now, sayer } = told;
  const name = state.people.find(({ person }) => person === reader)?.name ?? say("someone");
  const { reading, covering: _, notBy: __, mark, ...about } = next;
  const item = now.state.sheet && itemNamed(now.state.sheet, next.item);
  const place = `again ${job} ${reading}`;
  const [typed, setTyped] = useState("");
  const [refused, setRefused] = useState("");
  useEffect(() => {
    void keep.draft<string>(place).then((draft) => draft !== undefined && setTyped(draft));
  }, [keep, place]);
  if (item === undefined) return null;
  const unit = item.unit?.[session.units] ?? "";
  const title = sayer.title(next.tag === undefined ? { item: item.id } : { item: item.id, tag: next.tag });
  const change = (text: string): void => {
    setTyped(text);
    setRefused("");
    void keep.keepDraft(place, text === "" ? undefined : text);
  };
  const take = async (): Promise<void> => {
    const read = readQuantity(typed, askedOf(item, unit));
    if (!read.ok) return setRefused(sayer.refusal(read.refusal));
    // in the name of whoever was chosen here, whoever enters on this phone today
    const answer = await keep.enter(job, "read-again", { what: { ...about, reading, typed, unit }, by: reader, draft: place });
    if (answer.is === "no room") return setRefused(say("unsent-full"));
    if (answer.is === "refused") return setRefused(sayer.refusal(answer.refusal));
  };
  return (
    <>
      <p>
        <b>{say("again-reader", { name })}</b> {say("again-not-shown")} {counted(say, "again-left", left)}
      </p>
      <h2>{title}</h2>
      {mark !== undefined && <p>{say("again-from-mark", { mark })}</p>}
      {item.prompt !== undefined && <p class="prompt">{sayer.words(item.prompt)}</p>}
      <TapeOrText item={item} unit={unit} value={typed} onChange={change} label={title} />
      <p role="alert">{refused}</p>
      <div class="shutter-row alone">
        <button type="button" class="target main enter-reading" onClick={() => void take()}>
          {say("again-enter")}
        </button>
      </div>
    </>
  );
}
