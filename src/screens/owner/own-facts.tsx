import { useState } from "preact/hooks";
import { type CompanyEntry, type QualitySpeaking, qualitySpeaking } from "../../quality/index.ts";
import type { EntryMade, InstrumentChecked, TapeStudied, Taught } from "../../wire/index.ts";
import type { OwnFacts } from "../office/own-facts.ts";
import { type Answer, tell } from "../parts/edge.ts";
import { refusalText, useSpeaking } from "../parts/speaking.ts";
import type { Say } from "../parts/words/index.ts";

/** 128 bits of chance, so that sent twice it is one entry. */
export const newFactId = (): string => crypto.randomUUID().replaceAll("-", "");

export type OwnKind = "taught" | "tape-studied" | "instrument-checked";

/** One fact in a sentence. */
function lineOf({ kind, what }: CompanyEntry, { name, word }: QualitySpeaking, say: Say): string {
  const people = (ids: readonly string[]): string => ids.map((id) => name({ of: "person", id })).join(", ");
  const day = (at: number): string => name({ of: "day", id: new Date(at).toISOString().slice(0, 10) });
  if (kind === "taught") {
    const { step, people: ids = [], day: on, note } = what as Taught;
    const who = ids.length === 0 ? say("facts-whole-crew") : people(ids);
    const line = say("facts-taught", { day: name({ of: "day", id: on }), step: name({ of: "step", id: step }), people: who });
    return note === undefined ? line : `${line} ${note}`;
  }
  if (kind === "tape-studied") {
    const { began, instrument, placing, people: ids } = what as TapeStudied;
    const with_ = { instrument: name({ of: "instrument", id: instrument }), placing: name({ of: "placing", id: placing }) };
    return say("facts-studied", { day: day(began), people: people(ids), ...with_ });
  }
  const { at, instrument, way, by } = what as InstrumentChecked;
  const how = word(`way-${way.replaceAll(" ", "-")}`);
  return say("facts-checked", { day: day(at), instrument: name({ of: "instrument", id: instrument }), way: how, person: people([by]) });
}

interface EnteredProps {
  readonly kind: OwnKind;
  readonly known: OwnFacts;
  readonly changed: () => void;
}

/** A longer list shows these at first. */
const FIRST_LINES = 6;

/** What was entered of one kind, the newest first, each with the way to say that it was a mistake. */
export function Entered({ kind, known, changed }: EnteredProps) {
  const { say, session } = useSpeaking();
  const [sure, setSure] = useState("");
  const [whole, setWhole] = useState(false);
  const [answer, setAnswer] = useState<Answer<EntryMade>>();
  const speaking = qualitySpeaking(session, known.names);
  const own = known.facts.filter((one) => one.kind === kind).reverse();
  const takeBack = async (entry: string): Promise<void> => {
    const told = await tell<EntryMade>("/api/company/facts", { id: newFactId(), kind: "taken-back", what: { entry } });
    setAnswer(told);
    setSure("");
    changed();
  };
  return (
    <section class="own-facts">
      <h2>{say("facts-entered")}</h2>
      {own.length === 0 && <p>{say("facts-none")}</p>}
      <ul>
        {(whole ? own : own.slice(0, FIRST_LINES)).map((one) => (
          <li key={one.id}>
            <p>{lineOf(one, speaking, say)}</p>
            <button type="button" class="target" onClick={() => (sure === one.id ? void takeBack(one.id) : setSure(one.id))}>
              {say(sure === one.id ? "facts-take-back-sure" : "facts-take-back")}
            </button>
          </li>
        ))}
      </ul>
      {own.length > FIRST_LINES && (
        <button type="button" class="target" aria-expanded={whole} onClick={() => setWhole(!whole)}>
          {say(whole ? "owner-rows-first" : "owner-rows", { rows: own.length })}
        </button>
      )}
      <div role="status" class={answer === undefined || answer.is === "given" ? "answer" : "answer refused"}>
        {answer?.is === "given" && <p>{say("facts-taken-back", { number: answer.value.number })}</p>}
        {answer?.is === "away" && <p>{say("after-away")}</p>}
        {answer?.is === "refused" && <p>{refusalText(answer.problem, session)}</p>}
      </div>
    </section>
  );
}
