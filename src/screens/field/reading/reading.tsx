import { useEffect, useState } from "preact/hooks";
import { askedOf, isMeasurable } from "../../../job/index.ts";
import { readQuantity } from "../../../reading/index.ts";
import { Link } from "../../parts/link.tsx";
import { useSpeaking } from "../../parts/speaking.ts";
import { PhoneFrame } from "../frame.tsx";
import type { Taking } from "../job-part.ts";
import { useKeep } from "../keep/index.ts";
import { measurePath, movePath, stepPath, tapePicturePath } from "../paths.ts";
import { useEnter } from "../use-enter.ts";
import { FromMark, type TiedFrom } from "./from-mark.tsx";
import { Instruments, setUpWhat } from "./instruments.tsx";
import { JustEntered, useGoOn } from "./just-entered.tsx";
import { Moment } from "./moment.tsx";
import { nextOpen, titleOfNext } from "./next-open.ts";
import { OtherWays } from "./other-ways.tsx";
import { ReworkAsked } from "./rework-asked.tsx";
import { standingNow } from "./standing.ts";
import { TapeOrText } from "./tape-or-text.tsx";
import { typedText } from "./typed-text.ts";
import { findingsOn, isDoubtful, VerdictNow } from "./verdict-now.tsx";

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
          <span>
            <b>{typedText(item, String(what.typed), sayer)}</b>
            {item.quantity !== "instant" && ` ${sayer.moment(at)}`}
          </span>
          <Link to={movePath(job, id)}>{say("reading-move")}</Link>
        </li>
      ))}
    </ul>
  );
}

/** One reading: the drawn tape, or typed as it stands there; what it comes to is said at once. */
export function ReadingPage(taking: Taking) {
  const { job, item, tag, told } = taking;
  const { say, session } = useSpeaking();
  const { keep } = useKeep();
  const enter = useEnter(job);
  const [typed, setTyped] = useState("");
  const [tied, setTied] = useState<TiedFrom>({});
  const [refused, setRefused] = useState("");
  const [entered, setEntered] = useState<string>();
  const goOn = useGoOn(taking);
  const { now, sayer } = told;
  // a height is read below the line of an instrument that stands somewhere
  const setUp = item.inSetUp === true ? standingNow(now.state, keep.now()) : undefined;
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
    setEntered(undefined);
    void keep.keepDraft(place, text === "" ? undefined : text);
  };
  const take = async (): Promise<void> => {
    const read = readQuantity(typed, askedOf(item, unit));
    if (!read.ok) return setRefused(sayer.refusal(read.refusal));
    if (item.fromMark === true && !tied.mark) return setRefused(say("reading-from-which-mark"));
    const answer = await enter("reading-taken", {
      what: { ...about, typed, unit, ...tied, ...(setUp === undefined ? {} : { setUp }) },
      draft: place,
      kept(entry) {
        setTyped("");
        setEntered(entry);
      },
    });
    if (answer?.is === "no room") return setRefused(say("unsent-full"));
    if (answer?.is === "refused") return setRefused(sayer.refusal(answer.refusal));
  };
  const found = findingsOn(told, item, tag);
  const doubtful = found.some(isDoubtful);
  // judged once the phone's own book holds it; what is in doubt stays here until somebody decides
  const isJudged = entered !== undefined && now.state.facts.some(({ id }) => id === entered);
  useEffect(() => {
    if (entered !== undefined && isJudged && !doubtful) goOn(entered);
  }, [entered, isJudged, doubtful, goOn]);
  // what comes next is known once everything is judged: of what is in doubt it is shown, the rest goes on after the verdict is painted
  const next = isJudged && doubtful ? nextOpen(told, job, item, tag) : undefined;
  if (item.inSetUp === true && setUp === undefined)
    return (
      <PhoneFrame title={sayer.title(about)} back={{ to: stepPath(job, item.step, tag), title: sayer.words(step?.title) }}>
        <Instruments told={told} begin={(standing) => enter("set-up-made", { what: setUpWhat(standing) })} />
      </PhoneFrame>
    );
  return (
    <PhoneFrame title={sayer.title(about)} back={{ to: stepPath(job, item.step, tag), title: sayer.words(step?.title) }}>
      {entered === undefined && <JustEntered job={job} told={told} />}
      {entered !== undefined && isJudged && !doubtful && <JustEntered key={entered} job={job} told={told} entry={entered} />}
      {item.prompt !== undefined && <p class="prompt">{sayer.words(item.prompt)}</p>}
      <ReworkAsked {...taking} />
      {isJudged && doubtful && <VerdictNow found={found} sayer={sayer} />}
      {isJudged && doubtful && (
        <ul class="choices">
          <li>
            <button type="button" class="target" onClick={() => setEntered(undefined)}>
              {say("reading-once-more")}
            </button>
          </li>
          <li>
            <Link to={tapePicturePath(job, item.id, tag)}>{say("reading-picture-of-tape")}</Link>
          </li>
          {now.state.sheet !== undefined && isMeasurable(now.state.sheet, item) && (
            <li>
              <Link to={measurePath(job, item.id, tag)}>{say("reading-measure")}</Link>
            </li>
          )}
        </ul>
      )}
      {entered === undefined && (
        <>
          {item.fromMark === true && <FromMark {...taking} tied={tied} onChange={setTied} />}
          {item.quantity === "instant" ? (
            <Moment value={typed} onChange={change} zone={now.state.opened?.zone ?? "UTC"} />
          ) : (
            <TapeOrText item={item} unit={unit} value={typed} onChange={change} label={sayer.title(about)} />
          )}
          <p role="alert">{refused}</p>
          <SoFar {...taking} />
          {found.length > 0 && <VerdictNow found={found} sayer={sayer} />}
        </>
      )}
      {isJudged && doubtful && (
        <Link to={next?.path ?? stepPath(job, item.step, tag)} class="target main">
          {next === undefined ? say("reading-to-step") : say("reading-next", { title: titleOfNext(next, told, say) })}
        </Link>
      )}
      {entered === undefined && (
        <>
          <OtherWays {...taking} />
          <div class="shutter-row alone">
            <button type="button" class="target main enter-reading" onClick={() => void take()}>
              {say("reading-enter")}
            </button>
          </div>
        </>
      )}
    </PhoneFrame>
  );
}
