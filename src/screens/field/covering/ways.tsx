import { type About, itemNamed, type Line, type WayOut } from "../../../job/index.ts";
import { Link } from "../../parts/link.tsx";
import { useSpeaking } from "../../parts/speaking.ts";
import { NotHere, PhoneFrame } from "../frame.tsx";
import type { JobPart } from "../job-part.ts";
import { coverPath, noCovering, takePath, wayPath } from "../paths.ts";
import { useTold } from "../told.ts";
import { aboutOfAddress } from "./address.ts";
import { nearestPath, sentenceOf } from "./held.tsx";
import { officeNumber } from "./office-number.ts";

const same = (a: About, b: About): boolean => a.item === b.item && a.check === b.check && a.tag === b.tag;

/** Every way out of one line, nearest first. */
export function WaysPage({ job, rest: [covering = "", thing, tag] }: JobPart) {
  const { say } = useSpeaking();
  const told = useTold(job);
  if (told === undefined) return <NotHere />;
  const { now, sayer } = told;
  const about = aboutOfAddress(thing, tag);
  if (covering === noCovering) return <InsteadOfTaking job={job} about={about} told={told} />;
  const back = { to: coverPath(job, covering), title: sayer.words(now.state.sheet?.coverings.find(({ id }) => id === covering)?.title) };
  const line = now.clearances.find((one) => one.covering === covering)?.lines.find((one) => same(one.about, about));
  if (line === undefined)
    return (
      <PhoneFrame title={sayer.title(about)} back={back}>
        <p role="status">{say("line-gone")}</p>
      </PhoneFrame>
    );
  return (
    <PhoneFrame title={sayer.title(about)} back={back}>
      <p class="says">{sentenceOf(line, { now, sayer })}</p>
      <ul class="choices">
        {line.waysOut.map((way) => (
          <li key={way}>
            <Way way={way} line={line} job={job} covering={covering} told={told} />
          </li>
        ))}
      </ul>
    </PhoneFrame>
  );
}

/** What is said of a thing that is not taken: that it does not apply, where it may not, or why it could not be taken. */
function InsteadOfTaking({ job, about, told }: Omit<WayProps, "way" | "line" | "covering"> & { readonly about: About }) {
  const { now, sayer } = told;
  const item = now.state.sheet && itemNamed(now.state.sheet, about.item ?? "");
  const ways: readonly WayOut[] = item?.mayNotApply === true ? ["does not apply", "could not be taken"] : ["could not be taken"];
  const title = sayer.title(about);
  return (
    <PhoneFrame title={title} back={{ to: takePath(job, about.item ?? "", about.tag), title }}>
      <ul class="choices">
        {ways.map((way) => (
          <li key={way}>
            <Link to={wayPath(job, way, about, noCovering)}>{sayer.wayOut(way)}</Link>
          </li>
        ))}
      </ul>
    </PhoneFrame>
  );
}

interface WayProps {
  readonly way: WayOut;
  readonly line: Line;
  readonly job: string;
  readonly covering: string;
  readonly told: NonNullable<ReturnType<typeof useTold>>;
}

function Way({ way, line, job, covering, told: { now, sayer } }: WayProps) {
  const { say } = useSpeaking();
  const words = sayer.wayOut(way);
  const near = nearestPath(line, way, { job, now });
  if (near !== undefined) return <Link to={near}>{words}</Link>;
  if (way === "wait") return <p>{line.from === undefined ? words : say("wait-until", { time: sayer.moment(line.from) })}</p>;
  if (way === "call the office" || way === "ask for the figure") {
    const number = officeNumber(now.state.settings);
    return number === undefined ? (
      <p>
        {words}: {say("office-number-unknown")}
      </p>
    ) : (
      <a class="target" href={`tel:${number.replaceAll(/[^+\d]/g, "")}`}>
        {words}: {number}
      </a>
    );
  }
  return <Link to={wayPath(job, way, line.about, covering)}>{words}</Link>;
}
