import { useId, useRef, useState } from "preact/hooks";
import type { Json } from "../../../ledger/index.ts";
import type { AfterWorkKind, EntryMade, WireProblem } from "../../../wire/index.ts";
import { tell } from "../../parts/edge.ts";
import { refusalText, useSpeaking } from "../../parts/speaking.ts";
import type { ScreenWord } from "../../parts/words/index.ts";
import { patterns, type TypedField, typedFact } from "./typed-fields.ts";

type State =
  | { readonly is: "ready" | "entering" | "away" }
  | { readonly is: "entered"; readonly number: number }
  | { readonly is: "refused"; readonly problem: WireProblem };

interface SaidFormProps {
  readonly job: string;
  readonly kind: AfterWorkKind;
  readonly title: ScreenWord;
  readonly enter: ScreenWord;
  readonly fields: readonly TypedField[];
  /** What goes with it without being typed. */
  readonly more?: () => Promise<{ readonly [key: string]: Json }>;
  /** Other jobs in which the same is entered: one hand-over for several. */
  readonly beside?: readonly string[];
  readonly entered?: () => void;
}

const newId = (): string => Array.from(crypto.getRandomValues(new Uint8Array(16)), (byte) => byte.toString(16).padStart(2, "0")).join("");

/** Enters one fact after the work. Its id is made here, so that what is sent twice is one entry. */
export function SaidForm({ job, kind, title, enter, fields, more, beside = [], entered }: SaidFormProps) {
  const { say, session } = useSpeaking();
  const [state, setState] = useState<State>({ is: "ready" });
  const ids = useRef(new Map<string, string>());
  // kept until every job has it: what was half sent is sent again as the same entries
  const idIn = (of: string): string => {
    const id = ids.current.get(of) ?? newId();
    ids.current.set(of, id);
    return id;
  };
  const submit = (event: SubmitEvent): void => {
    event.preventDefault();
    if (state.is === "entering") return;
    const form = event.currentTarget as HTMLFormElement;
    const given = new FormData(form);
    const { what, who } = typedFact(fields, (name) => String(given.get(name) ?? ""));
    setState({ is: "entering" });
    void (async () => {
      const also = (await more?.()) ?? {};
      const enterIn = (of: string) =>
        tell<EntryMade>(`/api/jobs/${of}/afterwards`, {
          id: idIn(of),
          kind,
          what: { ...what, ...also },
          ...(who === undefined ? {} : { who }),
        });
      const answer = await enterIn(job);
      if (answer.is !== "given") return setState(answer);
      for (const other of beside) {
        const there = await enterIn(other);
        if (there.is !== "given") return setState(there);
      }
      setState({ is: "entered", number: answer.value.number });
      ids.current.clear();
      form.reset();
      entered?.();
    })();
  };
  return (
    <details class="after-said">
      <summary class="target">{say(title)}</summary>
      <form class="issue" onSubmit={submit}>
        {fields.map((field) => (
          <Field key={field.name} field={field} />
        ))}
        <button type="submit" class="target main" aria-disabled={state.is === "entering"}>
          {say(enter)}
        </button>
        <div role="status" class={state.is === "refused" || state.is === "away" ? "answer refused" : "answer"}>
          {state.is === "entering" && <p>{say("after-entering")}</p>}
          {state.is === "entered" && <p>{say("after-entered", { number: state.number })}</p>}
          {state.is === "away" && <p>{say("after-away")}</p>}
          {state.is === "refused" && (
            <p>
              {say("after-refused")} {refusalText(state.problem, session)}
            </p>
          )}
        </div>
      </form>
    </details>
  );
}

function Field({ field }: { readonly field: TypedField }) {
  const { say } = useSpeaking();
  const { name, word, reads = "text", choices, required = false, value = "" } = field;
  const id = useId();
  const own = { id, name, required };
  const pattern = reads === "money" || reads === "hours" ? patterns[reads] : ".*\\S.*";
  return (
    <label class="typed" for={id}>
      {say(word)}
      {choices !== undefined ? (
        <select class="target" {...own}>
          {!required && <option value="">{say("after-not-said")}</option>}
          {choices.map(({ value, title }) => (
            <option key={value} value={value}>
              {title}
            </option>
          ))}
        </select>
      ) : reads === "long" ? (
        <textarea {...own} maxLength={2000} rows={3} />
      ) : reads === "day" ? (
        <input {...own} type="date" />
      ) : (
        <input {...own} type="text" maxLength={200} autoComplete="off" pattern={pattern} defaultValue={value} />
      )}
    </label>
  );
}
