import { useRef, useState } from "preact/hooks";
import { tableFields } from "../../job/index.ts";
import type { CompanyView, TableLine, TableRead, WireProblem } from "../../wire/index.ts";
import { ask, sendFile } from "../parts/edge.ts";
import { Frame } from "../parts/frame.tsx";
import { useNews } from "../parts/news.ts";
import { refusalText, useSpeaking } from "../parts/speaking.ts";
import { wordsIn } from "./words-in.ts";

type State =
  | { readonly is: "ready" | "looking" | "taking" | "away" }
  | { readonly is: "seen" | "taken"; readonly table: TableRead }
  | { readonly is: "refused"; readonly problem: WireProblem };

const orders = ["month first", "day first"] as const;

/** The office opens and changes jobs from a table: looked at line by line first, then taken whole or not at all. */
export function JobsTable() {
  const { say } = useSpeaking();
  const news = useNews("table", () => ask<CompanyView>("/api/company"));
  return (
    <Frame title={say("table-title")} news={news} inside={true}>
      {news.value && <Taking company={news.value} />}
    </Frame>
  );
}

function Taking({ company }: { readonly company: CompanyView }) {
  const { say, session } = useSpeaking();
  const [state, setState] = useState<State>({ is: "ready" });
  const form = useRef<HTMLFormElement>(null);
  const busy = state.is === "looking" || state.is === "taking";
  const send = (look: boolean): void => {
    if (busy || form.current === null) return;
    const data = new FormData(form.current);
    const file = data.get("file");
    if (!(file instanceof File) || file.size === 0) return;
    setState({ is: look ? "looking" : "taking" });
    const asked = new URLSearchParams({ days: String(data.get("days")), sheet: String(data.get("sheet")), ...(look ? { look: "1" } : {}) });
    void sendFile<TableRead>("POST", `/api/tables/jobs?${asked}`, file).then((answer) =>
      setState(answer.is === "given" ? { is: look ? "seen" : "taken", table: answer.value } : answer),
    );
  };
  const submit = (event: SubmitEvent): void => {
    event.preventDefault();
    send(true);
  };
  // what was seen is of the file and the order of days that were chosen then
  const changed = (): void => setState({ is: "ready" });
  return (
    <form class="issue opening" ref={form} onSubmit={submit}>
      <p>{say("table-how")}</p>
      <p>
        {say("table-columns")}:{" "}
        {Object.values(tableFields)
          .map((heads) => heads[session.language][0])
          .join(", ")}
      </p>
      <label class="typed">
        {say("table-file")}
        <input class="target" type="file" name="file" accept=".csv,.txt,text/csv" required={true} onChange={changed} />
      </label>
      <label class="typed">
        {say("table-days")}
        <select class="target" name="days" onChange={changed}>
          {(session.units === "inch" ? orders : [...orders].reverse()).map((order) => (
            <option key={order} value={order}>
              {say(`table-days-${order}`)}
            </option>
          ))}
        </select>
      </label>
      <label class="typed">
        {say("tolerance-sheet")}
        <select class="target" name="sheet" onChange={changed}>
          {company.sheets.map(({ name, title, version }) => (
            <option key={name} value={name}>
              {wordsIn(title, session.language) || name}, {version}
            </option>
          ))}
          <option value="">{say("opening-sheet-none")}</option>
        </select>
      </label>
      <button type="submit" class="target" aria-disabled={busy}>
        {say("table-look")}
      </button>
      <div role="status" class={state.is === "refused" || state.is === "away" ? "answer refused" : "answer"}>
        {state.is === "looking" && <p>{say("table-looking")}</p>}
        {state.is === "taking" && <p>{say("table-taking")}</p>}
        {state.is === "away" && <p>{say("table-away")}</p>}
        {state.is === "refused" && (
          <p>
            {say("table-refused")} {refusalText(state.problem, session)}
          </p>
        )}
        {state.is === "seen" && <p>{say("table-sum", state.table.sum)}</p>}
        {state.is === "taken" && <p>{say("table-taken", state.table.sum)}</p>}
      </div>
      {(state.is === "seen" || state.is === "taken") && state.table.unread.length > 0 && (
        <p>{say("table-ignored", { columns: state.table.unread.join(", ") })}</p>
      )}
      {state.is === "seen" &&
        (state.table.sum.bad > 0 ? (
          <p class="doubted">{say("table-whole")}</p>
        ) : (
          <button type="button" class="target main" onClick={() => send(false)}>
            {say("table-take")}
          </button>
        ))}
      {(state.is === "seen" || state.is === "taken") && <Lines lines={state.table.lines} />}
    </form>
  );
}

function Lines({ lines }: { readonly lines: readonly TableLine[] }) {
  const { say, session } = useSpeaking();
  return (
    // biome-ignore lint/a11y/noNoninteractiveTabindex: a part that scrolls has to be reached by keyboard
    <section class="table-lines" tabIndex={0} aria-label={say("table-outcome")}>
      <table>
        <thead>
          <tr>
            <th scope="col">{say("table-number")}</th>
            <th scope="col">{say("opening-name")}</th>
            <th scope="col">{say("table-outcome")}</th>
          </tr>
        </thead>
        <tbody>
          {lines.map(({ line, number, title, outcome, instants, refusals }) => (
            <tr key={line} class={outcome}>
              <td>
                {say("table-line", { line })}: {number ?? "–"}
              </td>
              <td>{title ?? "–"}</td>
              <td>
                {say(`table-${outcome}`)}
                {Object.entries(instants).map(([item, instant]) => (
                  <div key={item}>
                    {item}: {instant}
                  </div>
                ))}
                {refusals.map((one) => (
                  <div key={`${one.code} ${one.place}`}>
                    {refusalText({ type: "", title: "", status: 422, detail: one.says, ...one }, session)} (
                    {one.place || say("table-line", { line })})
                  </div>
                ))}
              </td>
            </tr>
          ))}
        </tbody>
      </table>
    </section>
  );
}
