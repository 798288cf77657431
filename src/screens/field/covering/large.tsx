import type { Clearance } from "../../../job/index.ts";
import type { Sayer } from "../../../record/index.ts";
import { shapeOfClearance } from "../../parts/shapes.ts";
import { Sign } from "../../parts/sign.tsx";
import { useSpeaking } from "../../parts/speaking.ts";
import { counted } from "../../parts/words/index.ts";

/** The clearance of one covering in the largest type, and that the office has not seen what it rests on where that is so. */
export function LargeClearance({
  clearance,
  sayer,
  unseen,
}: {
  readonly clearance: Clearance;
  readonly sayer: Sayer;
  /** Entries of this job that only this phone holds. */
  readonly unseen: number;
}) {
  const { say } = useSpeaking();
  return (
    <div class={`large-clearance ${clearance.state.replace(" ", "-")}`}>
      <p class="clearance" role="status">
        <Sign shape={shapeOfClearance(clearance.state)} />
        <strong>{sayer.clearance(clearance)}</strong>
      </p>
      {clearance.announced !== undefined && <p>{say("announced-about", { time: sayer.moment(clearance.announced.about) })}</p>}
      {unseen > 0 && <p class="unseen">{counted(say, "office-not-seen", unseen)}</p>}
    </div>
  );
}
