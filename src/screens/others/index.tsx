import { useEffect, useRef, useState } from "preact/hooks";
import type { EntryMade, OthersAsked, OthersFile, WireProblem } from "../../wire/index.ts";
import { digest } from "../parts/digest.ts";
import { type Answer, ask, tell } from "../parts/edge.ts";
import { refusalText } from "../parts/speaking.ts";
import { type Say, screenWords } from "../parts/words/index.ts";

type Language = OthersAsked["language"];
type State = { readonly is: "ready" | "sending" | "away" | "done" } | { readonly is: "refused"; readonly problem: WireProblem };

/** Stores the paper or picture that goes with it. */
async function sendFile(token: string, file: File, sha256: string): Promise<Answer<OthersFile>> {
  try {
    const answer = await fetch(`/api/others/${token}/files/${sha256}`, {
      method: "PUT",
      headers: { "x-asburied": "1", "content-type": file.type || "application/octet-stream" },
      body: file,
    });
    const said: unknown = await answer.json();
    return answer.ok ? { is: "given", value: said as OthersFile } : { is: "refused", problem: said as WireProblem };
  } catch {
    return { is: "away" };
  }
}

/** The page behind a link, for whoever did one thing on a job and signs in nowhere: his name, what he did, his paper. */
export function Others({ token }: { readonly token: string }) {
  const [language, setLanguage] = useState<Language>(navigator.language.startsWith("es") ? "es" : "en");
  const [asked, setAsked] = useState<Answer<OthersAsked>>();
  const say = screenWords(language);
  useEffect(() => {
    void ask<OthersAsked>(`/api/others/${token}`).then((answer) => {
      setAsked(answer);
      if (answer.is === "given" && !navigator.language.startsWith("es")) setLanguage(answer.value.language);
    });
  }, [token]);
  useEffect(() => {
    document.documentElement.lang = language;
    document.title = `${say("others-title")} · Asburied`;
  }, [language, say]);
  return (
    <div class="drawing">
      <header class="page-head">
        <h1>{say("others-title")}</h1>
      </header>
      <main>
        <p>
          <button type="button" class="target" onClick={() => setLanguage(language === "en" ? "es" : "en")}>
            {say("others-other-language")}
          </button>
        </p>
        {asked === undefined && <p role="status">{say("reading-first")}</p>}
        {asked?.is === "away" && <p role="status">{say("others-away")}</p>}
        {asked?.is === "refused" && <p role="status">{refusalText(asked.problem, { language, units: "inch" })}</p>}
        {asked?.is === "given" && <Asked token={token} asked={asked.value} language={language} say={say} />}
      </main>
    </div>
  );
}

interface AskedProps {
  readonly token: string;
  readonly asked: OthersAsked;
  readonly language: Language;
  readonly say: Say;
}

function Asked({ token, asked, language, say }: AskedProps) {
  const [state, setState] = useState<State>({ is: "ready" });
  const form = useRef<HTMLFormElement>(null);
  const send = async (): Promise<void> => {
    if (form.current === null) return;
    const given = new FormData(form.current);
    const file = given.get("file");
    if (!(file instanceof File) || file.size === 0) return;
    setState({ is: "sending" });
    const sha256 = await digest(new Uint8Array(await file.arrayBuffer()));
    const stored = await sendFile(token, file, sha256);
    if (stored.is !== "given") return setState(stored);
    const said = { name: String(given.get("name")).trim(), did: String(given.get("did")).trim(), [stored.value.is]: sha256 };
    const answer = await tell<EntryMade>(`/api/others/${token}`, said);
    setState(answer.is === "given" ? { is: "done" } : answer);
  };
  const submit = (event: SubmitEvent): void => {
    event.preventDefault();
    if (state.is !== "sending") void send();
  };
  if (state.is === "done")
    return (
      <p role="status" class="answer">
        {say("others-done")}
      </p>
    );
  return (
    <form class="issue" ref={form} onSubmit={submit}>
      <p>
        <b>{asked.what}</b>
      </p>
      <p>{say("others-for", { company: asked.company, job: asked.title, step: asked.step[language] ?? asked.step.en })}</p>
      <p>{say("others-not-judged")}</p>
      <label class="typed" for="others-name">
        {say("others-name")}
        <input id="others-name" name="name" type="text" required={true} maxLength={80} autoComplete="name" />
      </label>
      <label class="typed" for="others-did">
        {say("others-did")}
        <textarea id="others-did" name="did" required={true} maxLength={1000} rows={4} />
      </label>
      <label class="typed" for="others-file">
        {say("others-file")}
        <input class="target" id="others-file" name="file" type="file" accept="image/*,application/pdf" required={true} />
      </label>
      <button type="submit" class="target main" aria-disabled={state.is === "sending"}>
        {say("others-send")}
      </button>
      <div role="status" class={state.is === "refused" || state.is === "away" ? "answer refused" : "answer"}>
        {state.is === "sending" && <p>{say("others-sending")}</p>}
        {state.is === "away" && <p>{say("others-away")}</p>}
        {state.is === "refused" && <p>{refusalText(state.problem, { language, units: "inch" })}</p>}
      </div>
    </form>
  );
}
