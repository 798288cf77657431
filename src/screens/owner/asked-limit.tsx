import { useId, useState } from "preact/hooks";
import type { Check, ToleranceSheet } from "../../job/index.ts";
import type { Refusal } from "../../outcome/index.ts";
import { makeSheetSayer } from "../../record/index.ts";
import { readOwnFacts } from "../office/own-facts.ts";
import { quantityTyped } from "../office/sheets/typed-quantity.ts";
import { wordsIn } from "../office/words-in.ts";
import { useNews } from "../parts/news.ts";
import { refusalText, useSpeaking } from "../parts/speaking.ts";

const ends = ["lower", "upper"] as const;

/** Checks with a limit of their own, by sheet; one id is asked for once. */
const limited = (sheets: readonly ToleranceSheet[]): readonly Check[] => [
  ...new Map(
    sheets.flatMap((sheet) =>
      sheet.checks.filter(({ lower, upper }) => lower !== undefined || upper !== undefined).map((one) => [one.id, one]),
    ),
  ).values(),
];

/** Which limit is asked about and what it would be, typed in the company's units; sent on in the fixed unit of the check's kind. */
export function AskedLimit({ onAsk }: { readonly onAsk: (query: string) => void }) {
  const { say, session } = useSpeaking();
  const { value } = useNews("own facts", readOwnFacts);
  const [refused, setRefused] = useState<Refusal>();
  const checkField = useId();
  if (value === undefined) return null;
  const checks = limited(value.sheets);
  const sayer = makeSheetSayer(session, value.sheets);
  const submit = (event: SubmitEvent): void => {
    event.preventDefault();
    const given = new FormData(event.currentTarget as HTMLFormElement);
    const check = checks.find(({ id }) => id === given.get("check"));
    if (check === undefined) return;
    const query = new URLSearchParams({ check: check.id });
    for (const end of ends) {
      const read = quantityTyped(String(given.get(end) ?? ""), check.kind, session.units, end);
      if (read.is === "refused") {
        setRefused(read.refusal);
        return;
      }
      if (read.is === "value") query.set(end, String(read.value));
    }
    setRefused(undefined);
    onAsk(query.toString());
  };
  const now = (limit: Check["lower"], { kind }: Check): string => (limit === undefined ? "–" : sayer.limit(limit, kind));
  return (
    <form class="asked-with" onSubmit={submit}>
      <label class="typed" for={checkField}>
        {say("owner-limit-check")}
        <select id={checkField} name="check">
          {checks.map((check) => (
            <option key={check.id} value={check.id}>
              {say("owner-limit-now", {
                title: wordsIn(check.title, session.language) || check.id,
                lower: now(check.lower, check),
                upper: now(check.upper, check),
              })}
            </option>
          ))}
        </select>
      </label>
      {ends.map((end) => (
        <label key={end} class="typed">
          {say(`owner-limit-${end}`)}
          <input name={end} type="text" autoComplete="off" />
        </label>
      ))}
      {refused !== undefined && <p role="alert">{refusalText({ type: "", title: "", status: 422, detail: "", ...refused }, session)}</p>}
      <button type="submit" class="target main">
        {say("owner-limit-ask")}
      </button>
    </form>
  );
}
