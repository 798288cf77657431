import { useState } from "preact/hooks";
import type { Json } from "../../../ledger/index.ts";
import { readSettings } from "../../../record/index.ts";
import type { CompanyView, Settings, SettingsSet, WireProblem } from "../../../wire/index.ts";
import { ask, tell } from "../../parts/edge.ts";
import { Frame } from "../../parts/frame.tsx";
import { useNews } from "../../parts/news.ts";
import { refusalText, useSpeaking } from "../../parts/speaking.ts";
import { Chosen } from "../after-work/terms-fields.tsx";
import { Field } from "../opening-parts.tsx";
import { Keys } from "./keys.tsx";
import { Colours, Mark } from "./look.tsx";

type State = { readonly is: "ready" | "saving" | "saved" | "away" } | { readonly is: "refused"; readonly problem: WireProblem };

/** The company's name, what stands under it, its mark and colours, and the key of its seals. */
export function CompanyPage() {
  const { say } = useSpeaking();
  const news = useNews("company", () => ask<CompanyView>("/api/company"));
  return (
    <Frame title={say("company-title")} news={news} inside={true}>
      {news.value !== undefined && (
        <>
          <CompanySettingsForm company={news.value} saved={news.again} />
          <Keys />
        </>
      )}
    </Frame>
  );
}

const lineList = (typed: string): readonly string[] =>
  typed
    .split("\n")
    .map((line) => line.trim())
    .filter((line) => line !== "");

/** What was typed over what the company had; what this page does not know stays as it is. */
function settingsTyped(before: Settings, form: FormData, mark: string | undefined): Settings {
  const text = (name: string): string => String(form.get(name) ?? "").trim();
  const { mark: _mark, colours: _colours, officeTelephone: _telephone, officeMail: _mail, ...rest } = before;
  const typed = {
    ...rest,
    name: text("name"),
    zone: text("zone"),
    units: text("units") === "metric" ? "metric" : "inch",
    language: text("language") === "es" ? "es" : "en",
    lines: [...lineList(text("lines"))],
    paper: text("paper") === "a4" ? "a4" : "letter",
    namesInFull: form.get("namesInFull") !== null,
    ...(text("officeTelephone") !== "" && { officeTelephone: text("officeTelephone") }),
    ...(text("officeMail") !== "" && { officeMail: text("officeMail") }),
    ...(mark !== undefined && { mark }),
    ...(form.get("ownColours") !== null && { colours: { lines: text("colour-lines"), words: text("colour-words") } }),
  };
  return typed as Settings;
}

function CompanySettingsForm({ company, saved }: { readonly company: CompanyView; readonly saved: () => void }) {
  const { say, session } = useSpeaking();
  // what was read when the page was opened stays under the hand: a later reading changes no field
  const [first] = useState(() => company.settings.content);
  const [mark, setMark] = useState(first.mark);
  const [state, setState] = useState<State>({ is: "ready" });
  const read = readSettings(first as unknown as Json);
  const field = (name: string): string => String((read as unknown as Record<string, unknown>)[name] ?? "");
  const submit = (event: SubmitEvent): void => {
    event.preventDefault();
    if (state.is === "saving") return;
    const typed = settingsTyped(company.settings.content, new FormData(event.currentTarget as HTMLFormElement), mark);
    setState({ is: "saving" });
    void tell<SettingsSet>("/api/company/settings", typed, "PUT").then((answer) => {
      setState(answer.is === "given" ? { is: "saved" } : answer);
      saved();
    });
  };
  const choices = (name: "units" | "language" | "paper") =>
    ({
      units: [
        { value: "inch", title: say("company-units-inch") },
        { value: "metric", title: say("company-units-metric") },
      ],
      language: [
        { value: "en", title: say("issue-language-en") },
        { value: "es", title: say("issue-language-es") },
      ],
      paper: [
        { value: "letter", title: say("company-paper-letter") },
        { value: "a4", title: say("company-paper-a4") },
      ],
    })[name];
  return (
    <form class="issue opening company-settings" onSubmit={submit}>
      <p>{say("company-how")}</p>
      <fieldset>
        <legend>{say("company")}</legend>
        <Field name="name" word="company-name" most={120} required={true} value={read.name} />
        <Field
          name="officeTelephone"
          word="company-telephone"
          most={60}
          mode="tel"
          value={typeof first.officeTelephone === "string" ? first.officeTelephone : undefined}
        />
        <Field name="officeMail" word="company-mail" most={200} mode="email" value={first.officeMail} />
        <label class="typed wide">
          {say("company-lines")}
          <textarea name="lines" rows={3} maxLength={1000} defaultValue={read.lines.join("\n")} />
        </label>
        <Field name="zone" word="company-zone" most={64} required={true} value={read.zone} />
        {(["units", "language", "paper"] as const).map((name) => (
          <Chosen key={name} name={name} word={`company-${name}`} field={field} choices={choices(name)} mayStayOpen={false} />
        ))}
        <label class="target wide">
          <input type="checkbox" name="namesInFull" defaultChecked={read.namesInFull} />
          <span>{say("company-names")}</span>
        </label>
      </fieldset>
      <fieldset>
        <legend>{say("company-look")}</legend>
        <Mark mark={mark} chosen={setMark} />
        <Colours {...(read.colours && { colours: read.colours })} />
      </fieldset>
      <button type="submit" class="target main" aria-disabled={state.is === "saving"}>
        {say("company-save")}
      </button>
      <div role="status" class={state.is === "refused" || state.is === "away" ? "answer refused" : "answer"}>
        {state.is === "saving" && <p>{say("after-entering")}</p>}
        {state.is === "saved" && <p>{say("company-saved")}</p>}
        {state.is === "away" && <p>{say("after-away")}</p>}
        {state.is === "refused" && <p>{refusalText(state.problem, session)}</p>}
      </div>
    </form>
  );
}
