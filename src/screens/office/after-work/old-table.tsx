import { useState } from "preact/hooks";
import type { WarrantyImported, WireProblem } from "../../../wire/index.ts";
import { tell } from "../../parts/edge.ts";
import { refusalText, useSpeaking } from "../../parts/speaking.ts";

type Import =
  | { readonly is: "ready" | "reading" | "away" }
  | { readonly is: "read"; readonly csv: string; readonly rows: WarrantyImported }
  | { readonly is: "taken"; readonly count: number }
  | { readonly is: "refused"; readonly problem: WireProblem };

/** Old warranties from a table: every row's outcome is shown before anything is taken over. */
export function OldTable({ done }: { readonly done: () => void }) {
  const { say, session } = useSpeaking();
  const [state, setState] = useState<Import>({ is: "ready" });
  const send = async (csv: string, dry: boolean): Promise<void> => {
    setState({ is: "reading" });
    const answer = await tell<WarrantyImported>("/api/warranties/import", { csv, dry });
    if (answer.is !== "given") return setState(answer);
    setState(dry ? { is: "read", csv, rows: answer.value } : { is: "taken", count: answer.value.taken });
    if (!dry) done();
  };
  const rows = state.is === "read" ? state.rows.rows : [];
  const some = rows.some(({ outcome }) => outcome === "new" || outcome === "changed");
  const all = rows.every(({ outcome }) => outcome !== "does not read");
  return (
    <div class="issue">
      <label class="typed">
        {say("register-import-file")}
        <input
          type="file"
          accept=".csv,text/csv"
          onChange={(event) => {
            const table = event.currentTarget.files?.[0];
            if (table !== undefined) void table.text().then((csv) => send(csv, true));
          }}
        />
      </label>
      <p>{say("register-import-columns")}</p>
      <div role="status" class={state.is === "refused" || state.is === "away" ? "answer refused" : "answer"}>
        {state.is === "reading" && <p>{say("register-import-reading")}</p>}
        {state.is === "away" && <p>{say("after-away")}</p>}
        {state.is === "refused" && <p>{refusalText(state.problem, session)}</p>}
        {state.is === "taken" && <p>{say("register-import-taken", { count: state.count })}</p>}
        {state.is === "read" && !all && <p>{say("register-import-not-all")}</p>}
        {state.is === "read" && all && !some && <p>{say("register-import-nothing")}</p>}
      </div>
      {rows.length > 0 && (
        <table class="counts">
          <tbody>
            {rows.map(({ line, outcome, number, part, column, says }) => (
              <tr key={line}>
                <th scope="row">{say("register-import-line", { line })}</th>
                <td>{say(`register-import-${outcome}`)}</td>
                <td>{outcome === "does not read" ? `${column ?? ""}: ${says ?? ""}` : `${number ?? ""} ${part ?? ""}`}</td>
              </tr>
            ))}
          </tbody>
        </table>
      )}
      {state.is === "read" && all && some && (
        <button type="button" class="target main" onClick={() => void send(state.csv, false)}>
          {say("register-import-take")}
        </button>
      )}
    </div>
  );
}
