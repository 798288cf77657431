import { useSpeaking } from "../../parts/speaking.ts";
import { useKeep } from "../keep/index.ts";
import { instantOf, instantText } from "./instants.ts";

interface MomentProps {
  readonly value: string;
  readonly onChange: (text: string) => void;
  readonly zone: string;
}

/** When something happened: now, or a day and time of the site. */
export function Moment({ value, onChange, zone }: MomentProps) {
  const { say } = useSpeaking();
  const { keep } = useKeep();
  return (
    <>
      <button type="button" class="target" onClick={() => onChange(instantText(keep.now(), zone))}>
        {say("moment-now")}
      </button>
      <label class="typed">
        {say("moment-else", { zone })}
        <input
          type="datetime-local"
          value={value.slice(0, 16)}
          onInput={(event) => {
            const instant = instantOf(event.currentTarget.value, zone);
            onChange(instant === undefined ? "" : instantText(instant, zone));
          }}
        />
      </label>
    </>
  );
}
