import { useEffect, useState } from "preact/hooks";
import type { ToleranceSheet } from "../../../job/index.ts";
import type { VersionMade, WireProblem } from "../../../wire/index.ts";
import { tell } from "../../parts/edge.ts";
import { refusalText, useSpeaking } from "../../parts/speaking.ts";
import type { SheetTaken } from "../opening-sheet.ts";
import { Differences, Lines, useDifferences } from "./changes.tsx";
import { idOf, thingsOf } from "./draft.ts";
import { EditingContext, keyOf, useEditing } from "./editing.ts";
import { Parts } from "./outline.tsx";
import { useTitle } from "./thing.tsx";
import { useDraft } from "./use-draft.ts";

type State =
  | { readonly is: "ready" | "saving" | "away" | "not saved" }
  | { readonly is: "refused"; readonly problem: WireProblem }
  | { readonly is: "saved"; readonly before: ToleranceSheet; readonly after: ToleranceSheet };

/** Faults that are left, each with the way to the thing that it is about. */
function Faults() {
  const { say } = useSpeaking();
  const { sheet, faults, open } = useEditing();
  const title = useTitle();
  if (faults.length === 0) return <p>{say("sheets-faults-none")}</p>;
  return (
    <>
      <h3>{say("sheets-faults")}</h3>
      <ul class="faults">
        {faults.map(({ list, id, says }) => {
          const thing = list === undefined ? undefined : thingsOf(sheet, list).find((one) => idOf(one) === id);
          return (
            <li key={`${list} ${id} ${says}`}>
              <p>{says}</p>
              {list !== undefined && thing !== undefined && (
                <button
                  type="button"
                  class="target"
                  onClick={() => {
                    const key = keyOf(list, idOf(thing));
                    open(key);
                    setTimeout(() => document.getElementById(`open-${key}`)?.focus());
                  }}
                >
                  {say("sheets-fault-open", { title: title(thing) })}
                </button>
              )}
            </li>
          );
        })}
      </ul>
    </>
  );
}

function ChangedSoFar({ before }: { readonly before: ToleranceSheet }) {
  const { say } = useSpeaking();
  const { still } = useEditing();
  const lines = useDifferences(before, still);
  if (lines.length === 0) return <p>{say("sheets-changes-none")}</p>;
  return (
    <>
      <h3>{say("sheets-changes")}</h3>
      <Lines lines={lines} />
    </>
  );
}

interface EditSheetProps {
  readonly taken: SheetTaken;
  /** What is changed already when the page opens; without it nothing is. */
  readonly begun?: ToleranceSheet;
  readonly saved: () => void;
}

/** One tolerance sheet on a page: its steps one below the other, one thing opened at a time, and what would be saved beside them. */
export function EditSheet({ taken, begun, saved }: EditSheetProps) {
  const { say, session } = useSpeaking();
  const [base, setBase] = useState(taken);
  const [state, setState] = useState<State>({ is: "ready" });
  const draft = useDraft(begun ?? base.content);
  const { sheet, judge, settle } = draft;
  const isChanged = sheet !== base.content;
  useEffect(() => {
    if (!isChanged) return;
    const stay = (event: BeforeUnloadEvent): void => event.preventDefault();
    addEventListener("beforeunload", stay);
    return () => removeEventListener("beforeunload", stay);
  }, [isChanged]);
  const save = (): void => {
    if (state.is === "saving") return;
    if (judge().length > 0) {
      setState({ is: "not saved" });
      return;
    }
    const next: ToleranceSheet = { ...sheet, version: base.content.version + 1 };
    setState({ is: "saving" });
    void tell<VersionMade>("/api/company/sheets", next, "POST", base.digest).then((answer) => {
      if (answer.is !== "given") {
        setState(answer);
        return;
      }
      setState({ is: "saved", before: base.content, after: next });
      setBase({ digest: answer.value.digest, content: next });
      settle(next);
      saved();
    });
  };
  const isRefused = ["away", "not saved", "refused"].includes(state.is);
  return (
    <EditingContext.Provider value={draft}>
      <div class="sheet-edit">
        <Parts />
        <section class="sheet-saving">
          <Faults />
          <ChangedSoFar before={base.content} />
          <button type="button" class="target main" aria-disabled={state.is === "saving"} onClick={save}>
            {say("sheets-save")}
          </button>
          <div role="status" class={isRefused ? "answer refused" : "answer"}>
            {state.is === "saving" && <p>{say("sheets-saving")}</p>}
            {state.is === "away" && <p>{say("sheets-away")}</p>}
            {state.is === "not saved" && <p>{say("sheets-not-saved")}</p>}
            {state.is === "refused" && (
              <p>
                {say("sheets-not-saved")} {refusalText(state.problem, session)}
              </p>
            )}
            {state.is === "saved" && (
              <>
                <p>{say("sheets-saved", { version: state.after.version })}</p>
                <Differences before={state.before} after={state.after} />
              </>
            )}
          </div>
        </section>
      </div>
    </EditingContext.Provider>
  );
}
