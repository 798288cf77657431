import { useEffect, useState } from "preact/hooks";
import type { Refusal } from "../../outcome/index.ts";
import { type CheckSaid, checkingSentence, checkRecord, checkSaid, type KeyList } from "../../proof/index.ts";
import type { Language } from "../../record/index.ts";
import type { SessionView } from "../../wire/index.ts";
import { Link } from "../parts/link.tsx";
import { useSpeaking } from "../parts/speaking.ts";
import { fetchList, keepListIn, keptLists } from "./key-lists.ts";
import { meansWith } from "./means.ts";
import { keepForLater, readPdf } from "./pdf.ts";

type State =
  | { readonly is: "nothing" }
  | { readonly is: "reading"; readonly file: string }
  | { readonly is: "checked"; readonly file: string; readonly said: CheckSaid }
  | { readonly is: "refused"; readonly file: string; readonly refusal: Refusal }
  | { readonly is: "not here" };

async function checked(file: File, lists: readonly KeyList[], language: Language): Promise<State> {
  const means = meansWith(lists);
  const bytes = new Uint8Array(await file.arrayBuffer());
  try {
    const read = await readPdf(bytes, means);
    if (!read.ok) return { is: "refused", file: file.name, refusal: read.refusal };
    const check = await checkRecord(read.value, means);
    return { is: "checked", file: file.name, said: checkSaid(check, read.value.pages.length, language) };
  } catch {
    // the reader itself did not come
    return { is: "not here" };
  }
}

/** A check as it is read: the answer first, in shape and word, then what it rests on. */
function Said({ file, said }: { readonly file: string; readonly said: CheckSaid }) {
  const { title, tone, standing, by, sections } = said;
  return (
    <section class={`checked ${tone}`}>
      <h2>
        <span class="checked-sign" aria-hidden="true">
          {tone === "unchanged" ? "=" : "≠"}
        </span>{" "}
        {standing}
      </h2>
      {by !== undefined && <p>{by}</p>}
      <p class="checked-file">{[file, ...title].join(" · ")}</p>
      {sections.map(({ title: name, lines }) => (
        <section key={name}>
          <h3>{name}</h3>
          <ul>
            {lines.map((line) => (
              <li key={line}>{line}</li>
            ))}
          </ul>
        </section>
      ))}
    </section>
  );
}

/** Whether a record is as it was sealed. Nobody need be signed in: whoever holds a record may ask, and the answer needs no signal. */
export function Checking({ session }: { readonly session: SessionView | undefined }) {
  const { say, session: speaking } = useSpeaking();
  const { language } = speaking;
  const [lists, setLists] = useState<readonly KeyList[]>(keptLists);
  const [state, setState] = useState<State>({ is: "nothing" });
  const [later, setLater] = useState(false);
  const [notList, setNotList] = useState<Refusal>();
  const sentence = checkingSentence(language);
  const company = session?.company;
  useEffect(() => {
    document.title = `${say("checking-title")} · Asburied`;
    void keepForLater().then(setLater);
  }, [say]);
  useEffect(() => {
    if (company !== undefined) void fetchList(company).then(() => setLists(keptLists()));
  }, [company]);

  const pick = async (file: File | undefined): Promise<void> => {
    if (file === undefined) return;
    setState({ is: "reading", file: file.name });
    setState(await checked(file, lists, language));
  };
  const add = async (file: File | undefined): Promise<void> => {
    if (file === undefined) return;
    const list = await keepListIn(file);
    setNotList(list.ok ? undefined : list.refusal);
    // one that cannot be kept is good for this page all the same
    if (list.ok) setLists((known) => [...known.filter((one) => one.company !== list.value.company), list.value]);
  };

  return (
    <div class="drawing">
      <header class="page-head">
        <h1>{say("checking-title")}</h1>
        {session !== undefined && (
          <div class="under-name">
            <nav aria-label={say("jobs")}>
              <Link to="/">{say("to-all-jobs")}</Link>
            </nav>
          </div>
        )}
      </header>
      <main>
        <p>{say("checking-how")}</p>
        <p>
          <label class="target">
            {say("checking-pick")}{" "}
            <input
              type="file"
              accept="application/pdf,.pdf"
              name="record"
              onChange={(event) => void pick(event.currentTarget.files?.[0])}
            />
          </label>
        </p>
        <div role="status">
          {state.is === "reading" && <p>{say("checking-reading", { file: state.file })}</p>}
          {state.is === "refused" && <p class="refused">{`${state.file}: ${sentence(state.refusal)}`}</p>}
          {state.is === "not here" && <p class="refused">{say("checking-not-here")}</p>}
          {state.is === "checked" && <Said file={state.file} said={state.said} />}
        </div>
        <p>{lists.length === 0 ? say("checking-keys-none") : say("checking-keys", { names: lists.map(({ name }) => name).join(", ") })}</p>
        <p>
          <label class="target">
            {say("checking-keys-pick")}{" "}
            <input type="file" accept="application/json,.json" name="keys" onChange={(event) => void add(event.currentTarget.files?.[0])} />
          </label>
        </p>
        <div role="status">
          {notList !== undefined && <p class="refused">{sentence(notList)}</p>}
          {later && <p class="quiet">{say("checking-later")}</p>}
        </div>
      </main>
    </div>
  );
}
