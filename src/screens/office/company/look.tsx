import { useState } from "preact/hooks";
import { contrastOnWhite, LINES_CONTRAST, WORDS_CONTRAST } from "../../../record/index.ts";
import type { MarkMade, WireProblem } from "../../../wire/index.ts";
import { sendFile } from "../../parts/edge.ts";
import { refusalText, useSpeaking } from "../../parts/speaking.ts";

type State = { readonly is: "ready" | "sending" | "away" } | { readonly is: "refused"; readonly problem: WireProblem };

interface MarkProps {
  readonly mark: string | undefined;
  readonly chosen: (mark: string | undefined) => void;
}

/** The company's mark as it is drawn from the file, seen before it is saved. */
export function Mark({ mark, chosen }: MarkProps) {
  const { say, session } = useSpeaking();
  const [state, setState] = useState<State>({ is: "ready" });
  const send = async (file: File): Promise<void> => {
    setState({ is: "sending" });
    const answer = await sendFile<MarkMade>("PUT", "/api/company/mark", file);
    setState(answer.is === "given" ? { is: "ready" } : answer);
    if (answer.is === "given") chosen(answer.value.mark);
  };
  return (
    <>
      <label class="typed">
        {say("company-mark")}
        <input
          type="file"
          accept="image/png,image/jpeg,image/svg+xml"
          onChange={(event) => {
            const [file] = event.currentTarget.files ?? [];
            if (file !== undefined) void send(file);
          }}
        />
      </label>
      {mark !== undefined && (
        <div class="company-mark-shown">
          <img src={`/api/company/mark/${mark}`} alt={say("company-mark-now")} />
          <button type="button" class="target" onClick={() => chosen(undefined)}>
            {say("company-mark-drop")}
          </button>
        </div>
      )}
      <p>{say("company-mark-how")}</p>
      <div role="status" class={state.is === "refused" || state.is === "away" ? "answer refused wide" : "answer wide"}>
        {state.is === "sending" && <p>{say("after-entering")}</p>}
        {state.is === "away" && <p>{say("after-away")}</p>}
        {state.is === "refused" && <p>{refusalText(state.problem, session)}</p>}
      </div>
    </>
  );
}

interface ColoursShown {
  readonly lines: string;
  readonly words: string;
}
const BEGIN: ColoursShown = { lines: "#191815", words: "#08696b" };
const LEAST = { lines: LINES_CONTRAST, words: WORDS_CONTRAST } as const;
const PALE = { lines: "company-lines-pale", words: "company-words-pale" } as const;

/** Two colours of the company's own, each with its contrast on white as it is chosen. */
export function Colours({ colours }: { readonly colours?: ColoursShown }) {
  const { say } = useSpeaking();
  const [own, setOwn] = useState(colours !== undefined);
  const [shown, setShown] = useState(colours ?? BEGIN);
  return (
    <>
      <label class="target wide">
        <input type="checkbox" name="ownColours" checked={own} onChange={(event) => setOwn(event.currentTarget.checked)} />
        <span>{say("company-colours")}</span>
      </label>
      {own &&
        (["lines", "words"] as const).map((name) => {
          const contrast = contrastOnWhite(shown[name]);
          return (
            <div key={name} class="company-colour">
              <label class="typed">
                {say(`company-colour-${name}`)}
                <input
                  type="color"
                  name={`colour-${name}`}
                  value={shown[name]}
                  aria-describedby={`colour-${name}-says`}
                  onInput={(event) => setShown({ ...shown, [name]: event.currentTarget.value })}
                />
              </label>
              <p id={`colour-${name}-says`} aria-live="polite">
                {/* rounded down: 4.49 is not 4.5 */}
                {say(contrast < LEAST[name] ? PALE[name] : "company-colours-on", {
                  contrast: (Math.floor(contrast * 100) / 100).toFixed(2),
                })}
              </p>
            </div>
          );
        })}
    </>
  );
}
