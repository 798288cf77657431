import { useEffect, useState } from "preact/hooks";
import { makeSayer } from "../../record/index.ts";
import { Link } from "../parts/link.tsx";
import { JOIN_PATH } from "../parts/place.ts";
import { Section } from "../parts/section.tsx";
import { clockText, refusalText, useSpeaking } from "../parts/speaking.ts";
import { counted } from "../parts/words/index.ts";
import { announcedAndGone } from "./announced.ts";
import { PhoneFrame } from "./frame.tsx";
import { type KeepState, type OwnEntry, type OwnPhoto, useKeep } from "./keep/index.ts";
import { takePath } from "./paths.ts";

const MEGABYTE = 1_000_000;
const unsent = <T extends OwnEntry | OwnPhoto>(all: readonly T[]): readonly T[] => all.filter(({ standing }) => standing === "not sent");
const text = (value: unknown): string | undefined => (typeof value === "string" ? value : undefined);

/** What an own entry is about, as its page is called. */
function about(
  { entry, job }: OwnEntry,
  { books }: KeepState,
  words: (from: KeepState["books"][number], item: string, tag?: string) => string,
) {
  const what = (entry.body as { readonly what?: { readonly content?: unknown } } | undefined)?.what?.content as
    | Readonly<Record<string, unknown>>
    | undefined;
  const book = books.find(({ kept }) => kept.job === job);
  const item = text(what?.item);
  return {
    title: book?.kept.title ?? job,
    what: book === undefined || item === undefined ? undefined : words(book, item, text(what?.tag)),
    path: item === undefined ? undefined : takePath(job, item, text(what?.tag)),
  };
}

function SendingNow({ state }: { readonly state: KeepState }) {
  const { say, session } = useSpeaking();
  const { keep } = useKeep();
  const [entries, photos] = [unsent(state.entries), unsent(state.photos)];
  const bytes = photos.reduce((sum, photo) => sum + photo.bytes, 0);
  const gone = state.photos.filter(({ standing }) => standing === "acknowledged").length;
  const { sending, triesAgain, awaySince, signedOut } = state;
  if (entries.length + photos.length === 0) return <p>{say("unsent-none")}</p>;
  return (
    <>
      <p class="unsent-count">
        {counted(say, "unsent-entries", entries.length)}, {counted(say, "unsent-photos", photos.length)} (
        {say("megabytes", { count: (bytes / MEGABYTE).toFixed(1) })})
      </p>
      {sending?.photo !== undefined && (
        <label class="progress">
          {say("unsent-this-picture")}
          <progress max={1} value={sending.share ?? 0} />
        </label>
      )}
      {photos.length > 0 && (
        <label class="progress">
          {say("unsent-all-pictures", { gone, all: gone + photos.length })}
          <progress max={gone + photos.length} value={gone} />
        </label>
      )}
      {signedOut && (
        <>
          <p class="stands-out">{say("signed-out-kept")}</p>
          <Link to={JOIN_PATH}>{say("signed-out-join")}</Link>
        </>
      )}
      {awaySince !== undefined && !signedOut && (
        <p class="stands-out">
          {say("phone-away", { time: clockText(awaySince, session.language) })}{" "}
          {triesAgain !== undefined && say("unsent-tries-again", { time: clockText(triesAgain, session.language) })}
        </p>
      )}
      <button type="button" class="target main" onClick={() => void keep.contact()} disabled={sending !== undefined}>
        {say(sending === undefined ? "unsent-send-now" : "unsent-sending")}
      </button>
    </>
  );
}

/** Entries that the office did not take: each with why, and both ways on. */
function NotTaken({ state }: { readonly state: KeepState }) {
  const { say, session } = useSpeaking();
  const { keep } = useKeep();
  const refused = state.entries.filter(({ standing }) => standing === "refused");
  if (refused.length === 0) return null;
  const words = (book: KeepState["books"][number], item: string, tag?: string): string =>
    makeSayer({ ...session, zone: "UTC", ...(book.state.sheet === undefined ? {} : { sheet: book.state.sheet }) }).title({
      item,
      ...(tag === undefined ? {} : { tag }),
    });
  return (
    <Section title="unsent-refused">
      <ul class="choices">
        {refused.map((own) => {
          const { title, what, path } = about(own, state, words);
          return (
            <li key={own.run} class="refused-entry">
              <p>
                <b>{title}</b>
                {what !== undefined && `: ${what}`}
              </p>
              {own.problem !== undefined && <p>{refusalText(own.problem, session)}</p>}
              {path !== undefined && (
                <Link to={path} class="target">
                  {say("unsent-enter-anew")}
                </Link>
              )}
              <LetGo run={own.run} letGo={() => void keep.letGo(own.run)} />
            </li>
          );
        })}
      </ul>
    </Section>
  );
}

/** Pressed twice, and the second time it says what it does. */
function LetGo({ letGo }: { readonly run: number; readonly letGo: () => void }) {
  const { say } = useSpeaking();
  const [asked, setAsked] = useState(false);
  return (
    <button type="button" class="target" onClick={() => (asked ? letGo() : setAsked(true))}>
      {say(asked ? "unsent-let-go-sure" : "unsent-let-go")}
    </button>
  );
}

/** Pictures whose bytes are nowhere any more, or that the office cannot take: taken again. */
function Again({ state }: { readonly state: KeepState }) {
  const { say, session } = useSpeaking();
  const sayerFor = (job: string) => {
    const sheet = state.books.find(({ kept }) => kept.job === job)?.state.sheet;
    return makeSayer({ ...session, zone: "UTC", ...(sheet === undefined ? {} : { sheet }) });
  };
  const gone = announcedAndGone(state);
  const refused = state.photos.filter(({ standing }) => standing === "refused");
  if (gone.length + refused.length === 0) return null;
  return (
    <Section title="unsent-again">
      {gone.length > 0 && <p>{counted(say, "unsent-gone", gone.length)}</p>}
      <ul class="choices">
        {gone.map(({ job, title, item, tag, photo }) => (
          <li key={photo}>
            <Link to={takePath(job, item, tag)} class="target">
              {title}: {sayerFor(job).title({ item, ...(tag === undefined ? {} : { tag }) })}
            </Link>
          </li>
        ))}
        {refused.map(({ sha256, problem }) => (
          <li key={sha256} class="refused-entry">
            <p>{problem === undefined ? sha256 : refusalText(problem, session)}</p>
          </li>
        ))}
      </ul>
    </Section>
  );
}

/** How sure this phone's store is, and what to do when it is not. */
function Room({ state }: { readonly state: KeepState }) {
  const { say } = useSpeaking();
  const { keep } = useKeep();
  const [left, setLeft] = useState<number>();
  useEffect(() => {
    void keep.freeSpace().then(setLeft);
    // written and taken away again to find out: once for each look at this page
  }, [keep]);
  const bytes = unsent(state.photos).reduce((sum, photo) => sum + photo.bytes, 0);
  return (
    <Section title="unsent-room">
      {state.full && <p class="stands-out">{say("unsent-full")}</p>}
      <p>
        {say(state.persisted ? "unsent-persisted" : "unsent-not-persisted")} {say("unsent-holds", { count: (bytes / MEGABYTE).toFixed(1) })}{" "}
        {left !== undefined && say("unsent-left", { count: Math.floor(left / MEGABYTE) })}
      </p>
      {!state.persisted && (
        <button type="button" class="target" onClick={() => void keep.askToPersist()}>
          {say("unsent-ask-persist")}
        </button>
      )}
    </Section>
  );
}

/** To a file, one press for each part: the last resort when a phone is full or broken and there is no signal. */
function ToFile({ state }: { readonly state: KeepState }) {
  const { say } = useSpeaking();
  const { keep } = useKeep();
  const [parts, setParts] = useState<{ readonly done: number; readonly all: number }>();
  const [busy, setBusy] = useState(false);
  if (unsent(state.entries).length + unsent(state.photos).length === 0) return null;
  const save = async (): Promise<void> => {
    setBusy(true);
    const { savePart } = await import("./save-file.ts");
    const next = parts === undefined || parts.done === parts.all ? 0 : parts.done;
    setParts(await savePart(keep, state, next));
    setBusy(false);
  };
  return (
    <Section title="unsent-file">
      <p>{say("unsent-file-how")}</p>
      <button type="button" class="target" disabled={busy} onClick={() => void save()}>
        {parts === undefined || parts.done === parts.all
          ? say("unsent-file-save")
          : say("unsent-file-next", { part: parts.done + 1, all: parts.all })}
      </button>
      <p role="status">{parts?.done === parts?.all && parts !== undefined ? say("unsent-file-done", { all: parts.all }) : ""}</p>
    </Section>
  );
}

/** What is on this phone and not at the office: how far it is, what was not taken and why, how sure the store is. */
export function UnsentPage() {
  const { say } = useSpeaking();
  const { keep, state } = useKeep();
  const [sure, setSure] = useState(false);
  return (
    <PhoneFrame title={say("unsent")} back={{ to: "/", title: say("open-in-the-ground") }}>
      {state.anothers && (
        <section class="stands-out">
          <p>{say("unsent-anothers")}</p>
          <button type="button" class="target" onClick={() => (sure ? void keep.giveUp() : setSure(true))}>
            {say(sure ? "unsent-give-up-sure" : "unsent-give-up")}
          </button>
        </section>
      )}
      <Section title="unsent-to-go">
        <SendingNow state={state} />
      </Section>
      <NotTaken state={state} />
      <Again state={state} />
      <Room state={state} />
      <ToFile state={state} />
    </PhoneFrame>
  );
}
