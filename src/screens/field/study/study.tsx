import { useEffect, useState } from "preact/hooks";
import { readLength } from "../../../reading/index.ts";
import { useSpeaking } from "../../parts/speaking.ts";
import { PhoneFrame } from "../frame.tsx";
import { useKeep } from "../keep/index.ts";
import { Choose } from "./choose.tsx";
import { type Turn, turnsOf } from "./order.ts";
import { keepFact, newFactId } from "./pending.ts";
import { Sending } from "./sending.tsx";
import { instrumentsOn, placingsOn } from "./things.ts";

/** Marks and rounds of a study: five marks, twice (issue of the owner's questions; twenty minutes for two people). */
const MARKS = 5;
const ROUNDS = 2;
const PLACE = "tape-study";

/** A study under way: kept on the phone after each reading, so that a phone that dies goes on where it was. */
interface Study {
  readonly id: string;
  readonly instrument: string;
  readonly placing: string;
  readonly people: readonly string[];
  readonly seed: number;
  readonly began: number;
  readonly readings: readonly (Turn & { readonly typed: string; readonly unit: string; readonly at: number })[];
}

/** The tape study: who reads which mark next, blind to everything that was read before. */
export function StudyPage() {
  const { say } = useSpeaking();
  const { keep } = useKeep();
  const [study, setStudy] = useState<Study | null>();
  const [turn, setTurn] = useState(0);
  useEffect(() => {
    void keep.draft<Study>(PLACE).then((kept) => setStudy(kept ?? null));
  }, [keep]);
  const go = async (next: Study | null): Promise<void> => {
    await keep.keepDraft(PLACE, next ?? undefined);
    setStudy(next);
  };
  const taken = async (next: Study): Promise<void> => {
    if (next.readings.length < next.people.length * MARKS * ROUNDS) return go(next);
    const { id, ...what } = next;
    // kept as a whole before the draft goes: a phone that dies between sends it once, by its id
    await keepFact(keep, { id, kind: "tape-studied", what: { ...what, marks: MARKS, rounds: ROUNDS, ended: keep.now() } });
    await go(null);
    setTurn(turn + 1);
  };
  return (
    <PhoneFrame title={say("study-title")} back={{ to: "/", title: say("open-in-the-ground") }}>
      <Sending turn={turn} />
      {study === null && <Begin onBegin={go} />}
      {study !== null && study !== undefined && <Next key={study.readings.length} study={study} onTaken={taken} onStop={() => go(null)} />}
    </PhoneFrame>
  );
}

function Begin({ onBegin }: { readonly onBegin: (study: Study) => Promise<void> }) {
  const { say } = useSpeaking();
  const { keep, state } = useKeep();
  const [instrument, setInstrument] = useState("");
  const [placing, setPlacing] = useState("");
  const [people, setPeople] = useState<readonly string[]>([]);
  const press = (id: string): void => setPeople(people.includes(id) ? people.filter((one) => one !== id) : [...people, id].slice(-3));
  const names = state.people.map(({ person, name }) => ({ id: person, title: { en: name } }));
  const ready = instrument !== "" && placing !== "" && people.length >= 2;
  const begin = (): Promise<void> => {
    const [seed = 0] = crypto.getRandomValues(new Uint32Array(1));
    return onBegin({ id: newFactId(), instrument, placing, people, seed, began: keep.now(), readings: [] });
  };
  return (
    <>
      <p>{say("study-how", { marks: MARKS })}</p>
      <Choose legend={say("study-people")} of={names} chosen={people} onChoose={press} />
      <Choose legend={say("study-instrument")} of={instrumentsOn(state.books)} chosen={[instrument]} onChoose={setInstrument} />
      <Choose legend={say("study-placing")} of={placingsOn(state.books)} chosen={[placing]} onChoose={setPlacing} />
      <button type="button" class="target main" disabled={!ready} onClick={() => void begin()}>
        {say("study-begin")}
      </button>
    </>
  );
}

interface NextProps {
  readonly study: Study;
  readonly onTaken: (study: Study) => Promise<void>;
  readonly onStop: () => Promise<void>;
}

/** One reading. Nothing on the page tells what anybody read before. */
function Next({ study, onTaken, onStop }: NextProps) {
  const { say, session } = useSpeaking();
  const { keep, state } = useKeep();
  const [typed, setTyped] = useState("");
  const [wrong, setWrong] = useState(false);
  const [sure, setSure] = useState(false);
  const turns = turnsOf(study.seed, study.people, MARKS, ROUNDS);
  const now = turns[study.readings.length];
  if (now === undefined) return null;
  const unit = session.units === "inch" ? "in" : "mm";
  const name = state.people.find(({ person }) => person === now.person)?.name ?? say("someone");
  const enter = async (event: SubmitEvent): Promise<void> => {
    event.preventDefault();
    if (!readLength(typed, unit).ok) return setWrong(true);
    await onTaken({ ...study, readings: [...study.readings, { ...now, typed, unit, at: keep.now() }] });
  };
  return (
    <form class="study-next" onSubmit={(event) => void enter(event)}>
      <p>{say("study-progress", { done: study.readings.length, all: turns.length })}</p>
      <p class="study-turn">
        <b>{name}</b> {say("study-mark", { mark: now.mark })}
      </p>
      <label class="typed">
        {say("reading-type", { unit })}
        <input type="text" autoComplete="off" value={typed} onInput={(event) => setTyped(event.currentTarget.value)} />
      </label>
      {wrong && <p role="alert">{say("study-not-read", { unit })}</p>}
      <button type="submit" class="target main" disabled={typed.trim() === ""}>
        {say("study-enter")}
      </button>
      <button type="button" class="target" onClick={() => (sure ? void onStop() : setSure(true))}>
        {say(sure ? "study-stop-sure" : "study-stop")}
      </button>
    </form>
  );
}
