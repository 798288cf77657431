import type { ComponentChildren } from "preact";
import { useId, useRef, useState } from "preact/hooks";
import type { Json } from "../../../ledger/index.ts";
import type { DecisionKind, EntryMade, WireProblem } from "../../../wire/index.ts";
import { tell } from "../../parts/edge.ts";
import { refusalText, useSpeaking } from "../../parts/speaking.ts";
import type { ScreenWord } from "../../parts/words/index.ts";

/** What was typed as the decision says it, or why it cannot be said so. */
export type Said =
  | { readonly what: { readonly [key: string]: Json }; readonly who?: { readonly [key: string]: string } }
  | { readonly unread: string };

type State =
  | { readonly is: "ready" | "entering" | "away" }
  | { readonly is: "entered"; readonly number: number }
  | { readonly is: "unread"; readonly says: string }
  | { readonly is: "refused"; readonly problem: WireProblem };

interface DecisionFormProps {
  readonly job: string;
  readonly kind: DecisionKind;
  readonly title: ScreenWord;
  readonly enter: ScreenWord;
  /** Once it is entered. */
  readonly entered: () => void;
  readonly said: (typed: (name: string) => string, form: FormData) => Promise<Said> | Said;
  readonly children: ComponentChildren;
}

const newId = (): string => Array.from(crypto.getRandomValues(new Uint8Array(16)), (byte) => byte.toString(16).padStart(2, "0")).join("");

/** Enters one decision. Its id is made here, so that what is sent twice is one entry. */
export function DecisionForm({ job, kind, title, enter, entered, said, children }: DecisionFormProps) {
  const { say, session } = useSpeaking();
  const [state, setState] = useState<State>({ is: "ready" });
  const id = useRef(newId());
  const submit = (event: SubmitEvent): void => {
    event.preventDefault();
    if (state.is === "entering") return;
    const form = event.currentTarget as HTMLFormElement;
    const given = new FormData(form);
    setState({ is: "entering" });
    void (async () => {
      const saying = await said((name) => String(given.get(name) ?? "").trim(), given);
      if ("unread" in saying) return setState({ is: "unread", says: saying.unread });
      const answer = await tell<EntryMade>(`/api/jobs/${job}/decisions`, { id: id.current, kind, ...saying });
      setState(answer.is === "given" ? { is: "entered", number: answer.value.number } : answer);
      if (answer.is !== "given") return;
      id.current = newId();
      form.reset();
      entered();
    })();
  };
  const troubled = state.is === "refused" || state.is === "away" || state.is === "unread";
  return (
    <details class="decision">
      <summary class="target">{say(title)}</summary>
      <form class="issue" onSubmit={submit}>
        {children}
        <button type="submit" class="target main" aria-disabled={state.is === "entering"}>
          {say(enter)}
        </button>
        <div role="status" class={troubled ? "answer refused" : "answer"}>
          {state.is === "entering" && <p>{say("after-entering")}</p>}
          {state.is === "entered" && <p>{say("after-entered", { number: state.number })}</p>}
          {state.is === "away" && <p>{say("after-away")}</p>}
          {state.is === "unread" && <p>{state.says}</p>}
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

interface FieldProps {
  readonly name: string;
  readonly word: ScreenWord;
  readonly long?: boolean;
  readonly day?: boolean;
  readonly optional?: boolean;
  readonly value?: string;
}

/** One thing that is typed. */
export function Typed({ name, word, long = false, day = false, optional = false, value = "" }: FieldProps) {
  const { say } = useSpeaking();
  const id = useId();
  const own = { id, name, required: !optional };
  return (
    <label class="typed" for={id}>
      {say(word)}
      {long ? (
        <textarea {...own} maxLength={1900} rows={3} />
      ) : day ? (
        <input {...own} type="date" />
      ) : (
        <input {...own} type="text" maxLength={200} autoComplete="off" defaultValue={value} />
      )}
    </label>
  );
}
