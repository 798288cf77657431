import { useState } from "preact/hooks";
import { type LengthUnit, readLength } from "../../../reading/index.ts";
import { useSpeaking } from "../../parts/speaking.ts";
import { PhoneFrame } from "../frame.tsx";
import { useKeep } from "../keep/index.ts";
import { Choose } from "./choose.tsx";
import { keepFact, newFactId } from "./pending.ts";
import { Sending } from "./sending.tsx";
import { instrumentsOn } from "./things.ts";

/** Ways to check an instrument against itself, with what is typed for each. */
const ways = [
  ["level turned", "check-level"],
  ["laser two ways", "check-laser"],
  ["tape hook", "check-hook"],
] as const;
type Way = (typeof ways)[number][0];

/** An instrument checked against itself: the same thing read twice, turned or pulled in between. */
export function InstrumentPage() {
  const { say, session } = useSpeaking();
  const { keep, state } = useKeep();
  const [instrument, setInstrument] = useState("");
  const [way, setWay] = useState<Way>();
  const [turn, setTurn] = useState(0);
  const [wrong, setWrong] = useState(false);
  const unit = session.units === "inch" ? "in" : "mm";
  const long = session.units === "inch" ? "ft" : "m";
  const enter = async (event: SubmitEvent): Promise<void> => {
    event.preventDefault();
    if (way === undefined) return;
    const form = event.currentTarget as HTMLFormElement;
    const given = new FormData(form);
    const typed = (name: string, of: LengthUnit) => ({ typed: String(given.get(name) ?? ""), unit: of });
    const over = way === "tape hook" ? undefined : typed("over", long);
    const all = [typed("first", unit), typed("second", unit), ...(over === undefined ? [] : [over])];
    if (all.some((one) => !readLength(one.typed, one.unit).ok)) return setWrong(true);
    setWrong(false);
    const by = state.today?.person ?? session.person;
    const what = { instrument, way, by, first: all[0], second: all[1], at: keep.now(), ...(over === undefined ? {} : { over }) };
    await keepFact(keep, { id: newFactId(), kind: "instrument-checked", what });
    form.reset();
    setTurn(turn + 1);
  };
  const key = ways.find(([one]) => one === way)?.[1];
  return (
    <PhoneFrame title={say("check-title")} back={{ to: "/", title: say("open-in-the-ground") }}>
      <Sending turn={turn} />
      <Choose legend={say("study-instrument")} of={instrumentsOn(state.books)} chosen={[instrument]} onChoose={setInstrument} />
      <Choose
        legend={say("check-way")}
        of={ways.map(([id, word]) => ({ id, title: { en: say(word) } }))}
        chosen={way === undefined ? [] : [way]}
        onChoose={(id) => setWay(id as Way)}
      />
      {key !== undefined && instrument !== "" && (
        <form class="study-next" onSubmit={(event) => void enter(event)}>
          <p>{say(`${key}-how`)}</p>
          <Field name="first" label={say(`${key}-first`, { unit })} />
          <Field name="second" label={say(`${key}-second`, { unit })} />
          {key !== "check-hook" && <Field name="over" label={say(`${key}-over`, { unit: long })} />}
          {wrong && <p role="alert">{say("study-not-read", { unit })}</p>}
          <button type="submit" class="target main">
            {say("study-enter")}
          </button>
        </form>
      )}
    </PhoneFrame>
  );
}

const Field = ({ name, label }: { readonly name: string; readonly label: string }) => (
  <label class="typed">
    {label}
    <input name={name} type="text" autoComplete="off" />
  </label>
);
