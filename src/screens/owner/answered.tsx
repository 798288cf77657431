import { useState } from "preact/hooks";
import type { AnswerView, TableView } from "../../quality/index.ts";
import { useSpeaking } from "../parts/speaking.ts";
import { counted } from "../parts/words/index.ts";
import { Pictured } from "./picture.tsx";

interface TableProps {
  readonly table: TableView;
  /** Where the whole table is. */
  readonly csv: string;
}

/** A longer table shows these at first. */
const FIRST_ROWS = 12;

function Table({ table, csv }: TableProps) {
  const { say } = useSpeaking();
  const [whole, setWhole] = useState(false);
  const { title, heads, rows, cut } = table;
  const shown = whole ? rows : rows.slice(0, FIRST_ROWS);
  const noted = rows.some(({ note }) => note !== "");
  return (
    <>
      <h2>{title}</h2>
      {/* a region that scrolls is reached by the keys */}
      {/* biome-ignore lint/a11y/noNoninteractiveTabindex: what scrolls sideways must be reached by keys */}
      <section class="wide" tabIndex={0} aria-label={title}>
        <table class="counts">
          <thead>
            <tr>
              {heads.map(({ text, number }) => (
                <th key={text} scope="col" class={number ? "number" : ""}>
                  {text}
                </th>
              ))}
              {noted && <th scope="col">{say("owner-note")}</th>}
            </tr>
          </thead>
          <tbody>
            {shown.map(({ cells, note }, line) => (
              <tr key={line}>
                {cells.map((cell, i) =>
                  i === 0 ? (
                    <th key={heads[i]?.text} scope="row">
                      {cell}
                    </th>
                  ) : (
                    <td key={heads[i]?.text} class={heads[i]?.number ? "number" : ""}>
                      {cell}
                    </td>
                  ),
                )}
                {noted && <td>{note}</td>}
              </tr>
            ))}
          </tbody>
        </table>
      </section>
      {rows.length > FIRST_ROWS && (
        <button type="button" class="target" aria-expanded={whole} onClick={() => setWhole(!whole)}>
          {say(whole ? "owner-rows-first" : "owner-rows", { rows: rows.length })}
        </button>
      )}
      {whole && cut > 0 && <p>{counted(say, "owner-cut", cut)}</p>}
      <p>
        <a class="target" href={csv}>
          {say("owner-csv")}
        </a>
      </p>
    </>
  );
}

/** An answer: too few to tell first, then what it says, what stands out, its pictures beside their tables, and what was counted. */
export function Answered({ view, asked }: { readonly view: AnswerView; readonly asked: string }) {
  const { say } = useSpeaking();
  const { decides, tooFew, says, signals, held, pictures, tables } = view;
  const [first = "", ...more] = says;
  const csv = (table: string): string => {
    const query = new URLSearchParams(asked);
    query.set("table", table);
    return `/api/questions/${view.id}/table?${query}`;
  };
  return (
    <div class="answered">
      <p class="decides">
        <b>{say("owner-decides")}:</b> {decides}
      </p>
      {tooFew !== "" && <p class="too-few">{tooFew}</p>}
      {first !== "" && <p class="answer-says">{first}</p>}
      {more.map((text) => (
        <p key={text}>{text}</p>
      ))}
      {signals.length > 0 && (
        <ul class="signals">
          {signals.slice(0, 12).map((text) => (
            <li key={text}>
              <b>{say("owner-stands-out")}:</b> {text}
            </li>
          ))}
        </ul>
      )}
      <div class="beside-table">
        {pictures.length > 0 && (
          <div class="plotted-all">
            {pictures.map((picture) => (
              <Pictured key={picture.title} view={picture} />
            ))}
          </div>
        )}
        <div class="beside-tables">
          {tables
            .filter(({ rows }) => rows.length > 0)
            .map((table) => (
              <Table key={table.id} table={table} csv={csv(table.id)} />
            ))}
        </div>
      </div>
      <p class="own-number">
        <b>{say("owner-counted")}:</b> {[...view.counted, held].filter((text) => text !== "").join(" ")}
      </p>
    </div>
  );
}
