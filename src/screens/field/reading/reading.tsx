import { useEffect, useState } from "preact/hooks";
import { askedOf, type Finding, type Item } from "../../../job/index.ts";
import { readQuantity } from "../../../reading/index.ts";
import { Link } from "../../parts/link.tsx";
import { shapeOfFinding } from "../../parts/shapes.ts";
import { Sign } from "../../parts/sign.tsx";
import { useSpeaking } from "../../parts/speaking.ts";
import { PhoneFrame } from "../frame.tsx";
import type { Taking } from "../job-part.ts";
import { useKeep } from "../keep/index.ts";
import { movePath, stepPath, takePath, tapePicturePath } from "../paths.ts";
import type { ToldOnPhone } from "../told.ts";
import { useEnter } from "../use-enter.ts";
import { FromMark, type TiedFrom } from "./from-mark.tsx";
import { Moment } from "./moment.tsx";
import { nextOpen } from "./next-open.ts";
import { TapeOrText } from "./tape-or-text.tsx";

/** The findings that an item's entries decide: its own, and those of the checks that read it. */
export function findingsOn({ now }: Pick<ToldOnPhone, "now">, item: Item, tag: string | undefined): readonly Finding[] {
  const reads = new Set(
    (now.state.sheet?.checks ?? []).filter(({ items, minus = [] }) => [...items, ...minus].includes(item.id)).map(({ id }) => id),
  );
  return now.findings.filter(
    (finding) =>
      (finding.tag === undefined || finding.tag === tag) && (finding.of === "check" ? reads.has(finding.check) : finding.check === item.id),
  );
}

/** What was entered here before, each with its time and the way to move it. */
function SoFar({ job, item, tag, told: { now, sayer } }: Taking) {
  const { say } = useSpeaking();
  const before = now.state.facts.filter(
    ({ kind, standing, what }) => kind === "reading-taken" && standing === "counts" && what.item === item.id && what.tag === tag,
  );
  if (before.length === 0) return null;
  return (
    <ul class="readings-so-far">
      {before.map(({ id, what, at }) => (
        <li key={id}>
          <b>{String(what.typed)}</b> {sayer.moment(at)} <Link to={movePath(job, id)}>{say("reading-move")}</Link>
        </li>
      ))}
    </ul>
  );
}

/** What the readings of an item come to now, in large type. */
export function VerdictNow({ found, sayer }: { readonly found: readonly Finding[]; readonly sayer: ToldOnPhone["sayer"] }) {
  return (
    <ul class="findings verdict-now" role="status">
      {found.map((finding) => (
        <li key={`${finding.check} ${finding.tag ?? ""}`}>
          <Sign shape={shapeOfFinding(finding)} />
          <span>{sayer.finding(finding)}</span>
        </li>
      ))}
    </ul>
  );
}

/** One reading: the drawn tape, or typed as it stands there; what it comes to is said at once. */
export function ReadingPage(taking: Taking) {
  const { job, item, tag, told } = taking;
  const { say, session, go } = useSpeaking();
  const { keep } = useKeep();
  const enter = useEnter(job);
  const [typed, setTyped] = useState("");
  const [tied, setTied] = useState<TiedFrom>({});
  const [refused, setRefused] = useState("");
  const [entered, setEntered] = useState(false);
  const { now, sayer } = told;
  const place = `reading ${job} ${item.id} ${tag ?? ""}`;
  useEffect(() => {
    void keep.draft<string>(place).then((draft) => draft !== undefined && setTyped(draft));
  }, [keep, place]);
  const step = now.state.sheet?.steps.find(({ id }) => id === item.step);
  const about = tag === undefined ? { item: item.id } : { item: item.id, tag };
  const unit = item.unit?.[session.units] ?? "";
  const change = (text: string): void => {
    setTyped(text);
    setRefused("");
    setEntered(false);
    void keep.keepDraft(place, text === "" ? undefined : text);
  };
  const take = async (): Promise<void> => {
    const read = readQuantity(typed, askedOf(item, unit));
    if (!read.ok) return setRefused(sayer.refusal(read.refusal));
    if (item.fromMark === true && !tied.mark) return setRefused(say("reading-from-which-mark"));
    const answer = await enter("reading-taken", { what: { ...about, typed, unit, ...tied } });
    if (answer?.is === "no room") return setRefused(say("unsent-full"));
    if (answer?.is === "refused") return setRefused(sayer.refusal(answer.refusal));
    if (answer?.is !== "kept") return;
    await keep.keepDraft(place, undefined);
    setTyped("");
    setEntered(true);
  };
  const found = findingsOn(told, item, tag);
  const doubtful = found.some(({ verdict }) => verdict === "outside" || verdict === "too close to call");
  const next = entered ? nextOpen(told, item, tag) : undefined;
  return (
    <PhoneFrame title={sayer.title(about)} back={{ to: stepPath(job, item.step, tag), title: sayer.words(step?.title) }}>
      {item.prompt !== undefined && <p class="prompt">{sayer.words(item.prompt)}</p>}
      {entered && <VerdictNow found={found} sayer={sayer} />}
      {entered && doubtful && (
        <ul class="choices">
          <li>
            <button type="button" class="target" onClick={() => setEntered(false)}>
              {say("reading-once-more")}
            </button>
          </li>
          <li>
            <Link to={tapePicturePath(job, item.id, tag)}>{say("reading-picture-of-tape")}</Link>
          </li>
        </ul>
      )}
      {!entered && (
        <>
          {item.fromMark === true && <FromMark {...taking} tied={tied} onChange={setTied} />}
          {item.quantity === "instant" ? (
            <Moment value={typed} onChange={change} zone={now.state.opened?.zone ?? "UTC"} />
          ) : (
            <TapeOrText item={item} unit={unit} value={typed} onChange={change} label={sayer.title(about)} />
          )}
          <p role="alert">{refused}</p>
          <button type="button" class="target main enter-reading" onClick={() => void take()}>
            {say("reading-enter")}
          </button>
          <SoFar {...taking} />
          {found.length > 0 && <VerdictNow found={found} sayer={sayer} />}
        </>
      )}
      {entered && (
        <button
          type="button"
          class="target main"
          onClick={() => go(next === undefined ? stepPath(job, item.step, tag) : takePath(job, next.item.id, next.tag))}
        >
          {next === undefined
            ? say("reading-to-step")
            : say("reading-next", { title: sayer.title({ item: next.item.id, ...(next.tag === undefined ? {} : { tag: next.tag }) }) })}
        </button>
      )}
    </PhoneFrame>
  );
}
