import { itemNamed } from "../../../job/index.ts";
import { Link } from "../../parts/link.tsx";
import { useSpeaking } from "../../parts/speaking.ts";
import { NotHere, PhoneFrame } from "../frame.tsx";
import type { JobPart, Taking } from "../job-part.ts";
import { stepPath, takePath } from "../paths.ts";
import { JustEntered, useGoOn } from "../reading/just-entered.tsx";
import { OtherWays } from "../reading/other-ways.tsx";
import { ReworkAsked } from "../reading/rework-asked.tsx";
import { useTold } from "../told.ts";
import { OnePicture } from "./one-picture.tsx";

/** A picture that a step asks for; kept, the next thing comes by itself. */
export function PicturePage(taking: Taking) {
  const { job, item, tag, told } = taking;
  const { now, sayer } = told;
  const goOn = useGoOn(taking);
  const pictured = tag === undefined ? { item: item.id } : { item: item.id, tag };
  const title = sayer.title(pictured);
  const step = now.state.sheet?.steps.find(({ id }) => id === item.step);
  return (
    <PhoneFrame title={title} back={{ to: stepPath(job, item.step, tag), title: sayer.words(step?.title) }}>
      <JustEntered job={job} told={told} />
      {item.prompt !== undefined && <p class="prompt">{sayer.words(item.prompt)}</p>}
      <ReworkAsked {...taking} />
      <OnePicture key={`${item.id} ${tag ?? ""}`} job={job} told={told} pictured={pictured} title={title} onKept={goOn}>
        <OtherWays {...taking} />
      </OnePicture>
    </PhoneFrame>
  );
}

/** The picture of the tape that shows a reading. */
export function TapePicturePage({ job, rest: [id = "", tag] }: JobPart) {
  const { say } = useSpeaking();
  const told = useTold(job);
  const item = told?.now.state.sheet && itemNamed(told.now.state.sheet, id);
  if (told === undefined || item?.kind !== "reading") return <NotHere />;
  const pictured = tag === undefined ? { item: id } : { item: id, tag };
  const reading = told.sayer.title(pictured);
  return (
    <PhoneFrame title={say("reading-picture-of-tape")} back={{ to: takePath(job, id, tag), title: reading }}>
      <p class="prompt">{say("picture-of-tape-how")}</p>
      <OnePicture job={job} told={told} pictured={pictured} title={`${say("reading-picture-of-tape")}: ${reading}`}>
        <Link to={takePath(job, id, tag)}>{say("picture-back-to-reading")}</Link>
      </OnePicture>
    </PhoneFrame>
  );
}
