import { useId, useRef, useState } from "preact/hooks";
import type { EntryMade } from "../../wire/index.ts";
import type { OwnFacts } from "../office/own-facts.ts";
import { wordsIn } from "../office/words-in.ts";
import { type Answer, tell } from "../parts/edge.ts";
import { refusalText, useSpeaking } from "../parts/speaking.ts";
import { newFactId } from "./own-facts.tsx";

interface TaughtFormProps {
  readonly known: OwnFacts;
  readonly entered: () => void;
}

/** Steps of all tolerance sheets, each id once: two sheets may have one step in common. */
function stepsOf({ sheets }: OwnFacts, language: "en" | "es"): readonly { readonly id: string; readonly title: string }[] {
  const steps = sheets.flatMap((sheet) => sheet.steps.filter(({ office }) => office !== true));
  return [...new Map(steps.map(({ id, title }) => [id, { id, title: wordsIn(title, language) || id }])).values()];
}

const twoDigits = (count: number): string => String(count).padStart(2, "0");
const dayNow = (): string => {
  const now = new Date();
  return `${now.getFullYear()}-${twoDigits(now.getMonth() + 1)}-${twoDigits(now.getDate())}`;
};

/** Who was shown which step, and when: it draws the line between before and after. Nobody chosen: the whole crew. */
export function TaughtForm({ known, entered }: TaughtFormProps) {
  const { say, session } = useSpeaking();
  const [answer, setAnswer] = useState<Answer<EntryMade> | "entering">();
  const id = useRef(newFactId());
  const [stepField, dayField, noteField] = [useId(), useId(), useId()];
  const submit = async (event: SubmitEvent): Promise<void> => {
    event.preventDefault();
    if (answer === "entering") return;
    const form = event.currentTarget as HTMLFormElement;
    const given = new FormData(form);
    const [people, note] = [given.getAll("people").map(String), String(given.get("note") ?? "").trim()];
    const what = {
      step: String(given.get("step") ?? ""),
      day: String(given.get("day") ?? ""),
      ...(people.length === 0 ? {} : { people }),
      ...(note === "" ? {} : { note }),
    };
    setAnswer("entering");
    const told = await tell<EntryMade>("/api/company/facts", { id: id.current, kind: "taught", what });
    setAnswer(told);
    if (told.is !== "given") return;
    id.current = newFactId();
    form.reset();
    entered();
  };
  const present = known.people.filter(({ left, role }) => left === undefined && role === "crew");
  return (
    <form class="asked-with taught-form" onSubmit={(event) => void submit(event)}>
      <h2>{say("taught-enter")}</h2>
      <p>{say("taught-how")}</p>
      <label class="typed" for={stepField}>
        {say("taught-step")}
        <select id={stepField} name="step" required={true}>
          {stepsOf(known, session.language).map((step) => (
            <option key={step.id} value={step.id}>
              {step.title}
            </option>
          ))}
        </select>
      </label>
      <label class="typed" for={dayField}>
        {say("taught-day")}
        <input id={dayField} name="day" type="date" required={true} defaultValue={dayNow()} max={dayNow()} />
      </label>
      <fieldset class="taught-people">
        <legend>{say("taught-people")}</legend>
        {present.map(({ person, name }) => (
          <label key={person} class="target">
            <input name="people" type="checkbox" value={person} /> {name}
          </label>
        ))}
      </fieldset>
      <label class="typed" for={noteField}>
        {say("taught-note")}
        <input id={noteField} name="note" type="text" maxLength={200} autoComplete="off" />
      </label>
      <button type="submit" class="target main" aria-disabled={answer === "entering"}>
        {say("taught-save")}
      </button>
      <div role="status" class={typeof answer === "object" && answer.is !== "given" ? "answer refused" : "answer"}>
        {answer === "entering" && <p>{say("after-entering")}</p>}
        {typeof answer === "object" && answer.is === "given" && <p>{say("after-entered", { number: answer.value.number })}</p>}
        {typeof answer === "object" && answer.is === "away" && <p>{say("after-away")}</p>}
        {typeof answer === "object" && answer.is === "refused" && (
          <p>
            {say("after-refused")} {refusalText(answer.problem, session)}
          </p>
        )}
      </div>
    </form>
  );
}
