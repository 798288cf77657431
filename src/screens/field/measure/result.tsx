import type { PhotoMeasured } from "../../../job/index.ts";
import type { Outcome } from "../../../outcome/index.ts";
import { Link } from "../../parts/link.tsx";
import { useSpeaking } from "../../parts/speaking.ts";
import { lensPath } from "../paths.ts";
import type { ToldOnPhone } from "../told.ts";
import { advised, doubtText, lengthText, refusedWord } from "./says.ts";
import type { End } from "./view.ts";

interface LengthProps {
  readonly measured: Outcome<PhotoMeasured>;
  readonly sayer: ToldOnPhone["sayer"];
}

/** The length with its doubt, in large type, or why there is none. */
export function Length({ measured, sayer }: LengthProps) {
  const { say } = useSpeaking();
  if (!measured.ok) {
    const word = refusedWord(measured.refusal);
    return (
      <p role="status" class="stands-out">
        {word === undefined ? sayer.refusal(measured.refusal) : say(word)}
      </p>
    );
  }
  const { length } = measured.value;
  return (
    <p role="status" class="call-out measure-length">
      {say("measure-length", { length: lengthText(sayer, length.micrometres), doubt: doubtText(sayer, length.doubt) })}
    </p>
  );
}

interface AdviceProps {
  readonly measured: PhotoMeasured;
  readonly ends: readonly End[];
  readonly needed: number;
  readonly sayer: ToldOnPhone["sayer"];
}

/** Whether the length is of use beside the tape, and what would make it surer. */
export function Advice({ measured, ends, needed, sayer }: AdviceProps) {
  const { say } = useSpeaking();
  const { enough, words } = advised(measured, ends, needed);
  return (
    <div class="measure-result">
      <p role="status">
        <b>{enough ? say("measure-enough") : say("measure-not-enough", { needed: doubtText(sayer, needed) })}</b>
      </p>
      {!enough && (
        <ol class="measure-advice">
          {words.map((word) => (
            <li key={word}>
              {say(word)}
              {word === "measure-says-lens-measured" && <Link to={lensPath}>{say("lens-to-page")}</Link>}
            </li>
          ))}
        </ol>
      )}
      <p class="measure-beside">{say("measure-beside")}</p>
    </div>
  );
}
