import { useState } from "preact/hooks";
import type { NewRecord, RecordMade, WireProblem } from "../../wire/index.ts";
import { tell } from "../parts/edge.ts";
import { refusalText, useSpeaking } from "../parts/speaking.ts";

type Edition = NewRecord["edition"];
type State =
  | { readonly is: "ready" }
  | { readonly is: "issuing" }
  | { readonly is: "issued"; readonly made: RecordMade }
  | { readonly is: "refused"; readonly problem: WireProblem }
  | { readonly is: "away" };

const editions: readonly Edition[] = ["customer", "company"];

interface IssueProps {
  readonly job: string;
  readonly issued: () => void;
  /** Language of the job. */
  readonly spoken: "en" | "es" | undefined;
}

/** Issues the record for the customer or for the company; a refusal is shown in words and loses nothing. */
export function IssueRecord({ job, issued, spoken }: IssueProps) {
  const { say, session } = useSpeaking();
  const [edition, setEdition] = useState<Edition>("customer");
  const [language, setLanguage] = useState(spoken ?? session.language);
  const [state, setState] = useState<State>({ is: "ready" });
  const busy = state.is === "issuing";
  const issue = async (): Promise<void> => {
    if (busy) return;
    setState({ is: "issuing" });
    const answer = await tell<RecordMade>(`/api/jobs/${job}/records`, { edition, language });
    setState(answer.is === "given" ? { is: "issued", made: answer.value } : answer);
    if (answer.is === "given") issued();
  };
  return (
    <div class="issue">
      <fieldset>
        <legend>{say("issue-for")}</legend>
        {editions.map((one) => (
          <label key={one} class="target">
            <input type="radio" name="edition" value={one} checked={edition === one} onChange={() => setEdition(one)} />
            <span>{say(`issue-${one}`)}</span>
          </label>
        ))}
      </fieldset>
      <label class="typed">
        {say("issue-language")}
        <select class="target" value={language} onChange={(event) => setLanguage(event.currentTarget.value === "es" ? "es" : "en")}>
          <option value="en">{say("issue-language-en")}</option>
          <option value="es">{say("issue-language-es")}</option>
        </select>
      </label>
      <button type="button" class="target main" aria-disabled={busy} onClick={() => void issue()}>
        {say("issue-record")}
      </button>
      <div role="status" class={state.is === "refused" || state.is === "away" ? "answer refused" : "answer"}>
        {busy && <p>{say("issuing")}</p>}
        {state.is === "issued" && <p>{say("issued-now", { version: state.made.version, pages: state.made.pages })}</p>}
        {state.is === "away" && <p>{say("issue-away")}</p>}
        {state.is === "refused" && (
          <p>
            {say("issue-refused")} {refusalText(state.problem, session)}
          </p>
        )}
      </div>
    </div>
  );
}
