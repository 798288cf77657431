import { useMemo } from "preact/hooks";
import { type SetOutCard, setOutCard } from "../../../job/index.ts";
import { Link } from "../../parts/link.tsx";
import { jobPath } from "../../parts/place.ts";
import { useSpeaking } from "../../parts/speaking.ts";
import { NotHere, PhoneFrame } from "../frame.tsx";
import type { JobPart } from "../job-part.ts";
import { useKeep } from "../keep/index.ts";
import { setOutPath } from "../paths.ts";
import { Instruments, type Standing } from "../reading/instruments.tsx";
import { type ToldOnPhone, useTold } from "../told.ts";
import { useEnter } from "../use-enter.ts";
import { called, useMarks } from "./marks-kept.ts";
import { MissingLinks } from "./missing-links.tsx";
import { OfficeCall } from "./office-call.tsx";
import { RodPage } from "./rod.tsx";
import { newSetUpPath, rodOfAddress, rodPath } from "./rod-places.ts";
import { SetOutLine } from "./set-out-row.tsx";
import { dayAt } from "./site-time.ts";

const closingWord = { closed: "out-closed", "so far": "out-so-far", "does not close": "out-does-not-close" } as const;
const gradeWord = {
  "this set-up": "out-grade-this",
  "an earlier set-up": "out-grade-earlier",
  "the design": "out-grade-design",
} as const;

interface RestsOnProps {
  readonly card: SetOutCard;
  readonly told: ToldOnPhone;
}

/** When the instrument was stood up, and whether that was on another day: nothing says that it has not been moved since. */
function useStood({ setUp }: SetOutCard, { now }: ToldOnPhone): { readonly made?: number; readonly isOld: boolean } {
  const { keep } = useKeep();
  const made = now.state.facts.find(({ id }) => id === setUp)?.at;
  const zone = now.state.opened?.zone ?? "UTC";
  if (made === undefined) return { isOld: false };
  return { made, isOld: dayAt(made, zone) !== dayAt(keep.now(), zone) };
}

/** The one reading that every number below rests on, and what speaks against trusting it. */
function RestsOn({ card, told }: RestsOnProps) {
  const { say } = useSpeaking();
  const marks = useMarks();
  const { made, isOld } = useStood(card, told);
  const { setUp, mark } = card;
  if (setUp === undefined) return <p class="prompt">{say("out-no-set-up")}</p>;
  return (
    <div class={`rests-on ${mark?.closing === "does not close" || isOld ? "doubtful" : ""}`}>
      {isOld && made !== undefined && <p>{say("out-stood-before", { time: told.sayer.moment(made) })}</p>}
      {mark === undefined ? (
        <p>{say("out-mark-first")}</p>
      ) : (
        <p>
          <b>{say("out-rests-on", { reading: called(marks, mark.value) })}</b> {say(closingWord[mark.closing])}
        </p>
      )}
    </div>
  );
}

/** When it stood, and how high its mark stands over finished grade. */
function StandsOver({ card, told }: RestsOnProps) {
  const { say } = useSpeaking();
  const marks = useMarks();
  const { made, isOld } = useStood(card, told);
  const { markOverGrade } = card;
  return (
    <>
      {markOverGrade !== undefined && (
        <p>
          {say(markOverGrade.value < 0 ? "out-mark-under" : "out-mark-over", { height: called(marks, markOverGrade.value) })}{" "}
          {say(gradeWord[markOverGrade.by])}
        </p>
      )}
      {made !== undefined && !isOld && <p>{say("out-stood", { time: told.sayer.moment(made) })}</p>}
    </>
  );
}

function Card({ job, told }: { readonly job: string; readonly told: ToldOnPhone }) {
  const { say } = useSpeaking();
  const { now, sayer } = told;
  const card = useMemo(() => setOutCard(now.state), [now.state]);
  const { setUp, mark, rows, missing, unknown, refusal } = card;
  const figures = [...unknown, ...rows.flatMap((row) => row.unknown)];
  return (
    <PhoneFrame title={say("numbers-set-out")} back={{ to: jobPath(job), title: now.view.title }}>
      <RestsOn card={card} told={told} />
      {refusal !== undefined && <p role="alert">{sayer.refusal(refusal)}</p>}
      <ul class="set-out">
        {rows.map((row) => (
          <SetOutLine key={row.place} job={job} row={row} hasMark={mark !== undefined} told={told} />
        ))}
      </ul>
      {setUp !== undefined && <MissingLinks job={job} missing={missing} told={told} />}
      <OfficeCall figures={figures} named={true} told={told} />
      <StandsOver card={card} told={told} />
      <div class={`set-out-foot ${mark === undefined ? "first" : ""}`}>
        {setUp !== undefined && (
          <Link to={rodPath(job, "height mark")} class={`target ${mark === undefined ? "main" : ""}`}>
            {say(mark === undefined ? "out-read-mark" : "out-mark-again")}
          </Link>
        )}
        <Link to={newSetUpPath(job)} class={`target ${setUp === undefined ? "main" : ""}`}>
          {say(setUp === undefined ? "out-begin" : "out-moved")}
        </Link>
      </div>
    </PhoneFrame>
  );
}

/** A new standing of the instrument; the height mark is read next. */
function NewSetUp({ job, told }: { readonly job: string; readonly told: ToldOnPhone }) {
  const { say, go } = useSpeaking();
  const enter = useEnter(job);
  const begin = async ({ instrument, receiver, distance }: Standing): Promise<void> => {
    const made = await enter("set-up-made", {
      what: {
        instrument,
        ...(receiver === undefined ? {} : { receiver }),
        ...(distance === undefined ? {} : { distance: { ...distance } }),
      },
    });
    if (made?.is === "kept") go(rodPath(job, "height mark"));
  };
  return (
    <PhoneFrame title={say("out-begin")} back={{ to: setOutPath(job), title: say("numbers-set-out") }}>
      <Instruments told={told} begin={begin} />
    </PhoneFrame>
  );
}

/** The set-out card: the rod readings to look for, from one reading on the height mark, and what was then read beside each. */
export function SetOutPage({ job, rest: [what] }: JobPart) {
  const told = useTold(job);
  const on = rodOfAddress(what ?? "");
  if (told === undefined) return <NotHere />;
  if (what === undefined) return <Card job={job} told={told} />;
  if (what === "new") return <NewSetUp job={job} told={told} />;
  return on === undefined ? <NotHere /> : <RodPage job={job} on={on} told={told} />;
}
