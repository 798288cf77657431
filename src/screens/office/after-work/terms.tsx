import { useState } from "preact/hooks";
import type { Json } from "../../../ledger/index.ts";
import { readTerms } from "../../../warranty/index.ts";
import type { CompanyView, SettingsSet, WireProblem } from "../../../wire/index.ts";
import { ask, tell } from "../../parts/edge.ts";
import { Frame } from "../../parts/frame.tsx";
import { useNews } from "../../parts/news.ts";
import { refusalText, useSpeaking } from "../../parts/speaking.ts";
import { Typed } from "./terms-fields.tsx";
import { TermPart, TermServices } from "./terms-parts.tsx";
import { termsShown, termsTyped } from "./terms-typed.ts";

type State = { readonly is: "ready" | "saving" | "saved" | "away" } | { readonly is: "refused"; readonly problem: WireProblem };

/** The company's own warranty terms: each part's months, start and rules, services, and the text in two languages. */
export function TermsPage() {
  const { say } = useSpeaking();
  const news = useNews("company", () => ask<CompanyView>("/api/company"));
  return (
    <Frame title={say("terms-title")} news={news} inside={true}>
      {news.value !== undefined && <Terms company={news.value} />}
    </Frame>
  );
}

function Terms({ company }: { readonly company: CompanyView }) {
  const { say, session } = useSpeaking();
  // what was read when the page was opened stays under the hand: a later reading changes no field
  const [first] = useState(() => readTerms(company.settings.content.warranty as Json | undefined));
  const [parts, setParts] = useState(Math.max(1, first.terms.length));
  const [state, setState] = useState<State>({ is: "ready" });
  const shown = termsShown(first);
  const field = (name: string): string => shown.get(name) ?? "";
  const submit = (event: SubmitEvent): void => {
    event.preventDefault();
    const form = new FormData(event.currentTarget as HTMLFormElement);
    const typed = { text: (name: string) => String(form.get(name) ?? ""), all: (name: string) => form.getAll(name).map(String) };
    const warranty = termsTyped(typed, parts);
    setState({ is: "saving" });
    void tell<SettingsSet>("/api/company/settings", { ...company.settings.content, warranty }, "PUT").then((answer) =>
      setState(answer.is === "given" ? { is: "saved" } : answer),
    );
  };
  return (
    <form class="after-work issue" onSubmit={submit}>
      <p>{say("after-lawyer")}</p>
      <p>{say("terms-none-shipped")}</p>
      {(["en", "es"] as const).map((language) => (
        <label key={language} class="typed">
          {say(`terms-text-${language}`)}
          <textarea name={`text-${language}`} rows={5} maxLength={20_000} defaultValue={field(`text-${language}`)} />
        </label>
      ))}
      <Typed name="acceptedDays" word="terms-accepted" field={field} digits={true} />
      {Array.from({ length: parts }, (_, place) => (
        <TermPart key={place} place={place} field={field} />
      ))}
      <button type="button" class="target" onClick={() => setParts(parts + 1)}>
        {say("terms-add")}
      </button>
      <TermServices field={field} />
      <button type="submit" class="target main" aria-disabled={state.is === "saving"}>
        {say("terms-save")}
      </button>
      <div role="status" class={state.is === "refused" || state.is === "away" ? "answer refused" : "answer"}>
        {state.is === "saving" && <p>{say("after-entering")}</p>}
        {state.is === "saved" && <p>{say("terms-saved")}</p>}
        {state.is === "away" && <p>{say("after-away")}</p>}
        {state.is === "refused" && <p>{refusalText(state.problem, session)}</p>}
      </div>
    </form>
  );
}
