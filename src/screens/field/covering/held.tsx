import { type Clearance, itemNamed, type Line, type WayOut } from "../../../job/index.ts";
import type { Sayer } from "../../../record/index.ts";
import { findingBehind } from "../../parts/counts.ts";
import type { JobNow } from "../../parts/job-now.ts";
import { Link } from "../../parts/link.tsx";
import { shapeOfVerdict } from "../../parts/shapes.ts";
import { Sign } from "../../parts/sign.tsx";
import { useSpeaking } from "../../parts/speaking.ts";
import { namesPath, setUpPath, takePath, waysPath } from "../paths.ts";
import { placeOf } from "../reading/next-open.ts";
import { isSetUp } from "./points.ts";

interface Told {
  readonly job: string;
  readonly now: JobNow;
  readonly sayer: Sayer;
}

/** Where a line's nearest way out leads: to its reading, its picture, its points, its names. */
export function nearestPath({ about }: Line, way: WayOut | undefined, { job, now }: Pick<Told, "job" | "now">): string | undefined {
  const { item, check, tag } = about;
  if (way === "name it" && item !== undefined) return namesPath(job, item);
  if (way !== "take it" && way !== "take it again") return undefined;
  const asked = item === undefined || now.state.sheet === undefined ? undefined : itemNamed(now.state.sheet, item);
  if (asked !== undefined) return placeOf({ now }, job, tag === undefined ? { item: asked } : { item: asked, tag }).path;
  const read = now.state.sheet?.checks.find(({ id }) => id === check);
  if (read === undefined) return undefined;
  const [first] = read.items;
  return isSetUp(now.state.sheet, read) ? setUpPath(job, read.id, tag) : first === undefined ? undefined : takePath(job, first, tag);
}

/** A measured value says more than its verdict alone; what is merely not there has nothing more to say. */
export function sentenceOf(line: Line, { now, sayer }: Pick<Told, "now" | "sayer">): string {
  const finding = findingBehind(now.findings, line.about);
  return finding === undefined || line.verdict === "not taken" || line.from !== undefined ? sayer.line(line) : sayer.finding(finding);
}

/** One line that holds a covering: pressed, it leads to what settles it; beside it the other ways. */
function HeldLine({ line, covering, job, now, sayer }: Told & { readonly line: Line; readonly covering: string }) {
  const { say } = useSpeaking();
  const nearest = line.waysOut.find((way) => way === "take it" || way === "take it again" || way === "name it");
  const path = nearestPath(line, nearest, { job, now });
  const words = (
    <>
      <Sign shape={line.from === undefined ? shapeOfVerdict(line.verdict) : "missing"} />
      <span>{sentenceOf(line, { now, sayer })}</span>
    </>
  );
  return (
    <li class="held-line">
      {path === undefined ? <p class="target plain">{words}</p> : <Link to={path}>{words}</Link>}
      <Link to={waysPath(job, covering, line.about)} class="target others">
        {say("other-ways")}
      </Link>
    </li>
  );
}

/** As many lines as are read at the edge of a hole. */
const MOST_LINES = 3;

/** What holds a covering, nearest first: three lines, or all of them. */
export function HeldLines({
  clearance: { lines, covering },
  all = false,
  ...told
}: Told & { readonly clearance: Clearance; readonly all?: boolean }) {
  const shown = all ? lines : lines.slice(0, MOST_LINES);
  return (
    <ol class="held-lines">
      {shown.map((line) => (
        <HeldLine
          key={`${line.about.check ?? ""} ${line.about.item ?? ""} ${line.about.tag ?? ""}`}
          line={line}
          covering={covering}
          {...told}
        />
      ))}
    </ol>
  );
}
