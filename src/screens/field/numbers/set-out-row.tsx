import type { SetOutRow } from "../../../job/index.ts";
import { Link } from "../../parts/link.tsx";
import { shapeOfVerdict } from "../../parts/shapes.ts";
import { Sign } from "../../parts/sign.tsx";
import { useSpeaking } from "../../parts/speaking.ts";
import type { ToldOnPhone } from "../told.ts";
import { called, useMarks } from "./marks-kept.ts";
import { rodInstances, rodPath } from "./rod-places.ts";

const moveWord = { raise: "out-raise", lower: "out-lower", leave: "out-leave" } as const;

type Reading = SetOutRow["readings"][number];

/** What was read and what to do: 'raise 3/8 in'. The verdict only where the tolerance sheet has a limit. */
export function Landed({ reading, sayer }: { readonly reading: Reading; readonly sayer: ToldOnPhone["sayer"] }) {
  const { say } = useSpeaking();
  const marks = useMarks();
  const { verdict, move, by, value } = reading;
  return (
    <span class="landed">
      {verdict !== undefined && <Sign shape={shapeOfVerdict(verdict)} />}
      <span>
        {say("out-read", { reading: called(marks, value) })} <b class="move">{say(moveWord[move], { by: called(marks, by) })}</b>
        {verdict !== undefined && <span class="verdict-word"> {sayer.verdict(verdict)}</span>}
      </span>
    </span>
  );
}

/** The rod reading to look for; an aim above the level line can be read on no rod that stands. */
export function Aim({ row: { aim, lower, upper } }: { readonly row: Pick<SetOutRow, "aim" | "lower" | "upper"> }) {
  const { say } = useSpeaking();
  const marks = useMarks();
  if (aim === undefined) return null;
  if (aim < 0) return <span class="over-line">{say("out-over-line", { by: called(marks, aim) })}</span>;
  return (
    <>
      <b class="rod">{called(marks, aim)}</b>
      {lower !== undefined && upper !== undefined && lower >= 0 && (
        <span class="between">{say("out-between", { lower: called(marks, lower), upper: called(marks, upper) })}</span>
      )}
    </>
  );
}

interface SetOutLineProps {
  readonly job: string;
  readonly row: SetOutRow;
  readonly hasMark: boolean;
  readonly told: ToldOnPhone;
}

/** One place of the card: pressed, it leads to its rod reading. */
export function SetOutLine({ job, row, hasMark, told }: SetOutLineProps) {
  const { say } = useSpeaking();
  const marks = useMarks();
  const { now, sayer } = told;
  const { place, overGrade, aim, latest, readings, unknown } = row;
  const why = unknown.length > 0 ? say("out-waits-figures", { figures: unknown.map(sayer.figureTitle).join("; ") }) : undefined;
  const words = (
    <>
      <span class="row-head">
        <b>{say(`out-place-${place}`)}</b>
        {overGrade !== undefined && (
          <span>{say(overGrade < 0 ? "out-under-grade" : "out-over-grade", { height: called(marks, overGrade) })}</span>
        )}
      </span>
      <Aim row={row} />
      {aim === undefined && <span class="between">{why ?? say(hasMark ? "out-waits-grade" : "out-waits-mark")}</span>}
      {readings.length > 1 && <span class="between">{say("out-read-places", { count: readings.length })}</span>}
      {latest !== undefined && <Landed reading={latest} sayer={sayer} />}
    </>
  );
  const leads = aim !== undefined && rodInstances(now, place).length > 0;
  return (
    <li>
      {leads ? (
        <Link to={rodPath(job, place)} class="target set-out-row">
          {words}
        </Link>
      ) : (
        <div class="set-out-row waits">{words}</div>
      )}
    </li>
  );
}
