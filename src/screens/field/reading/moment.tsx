import { useSpeaking } from "../../parts/speaking.ts";
import { useKeep } from "../keep/index.ts";

/** Minutes by which a zone is ahead of UTC at an instant. */
function aheadOf(zone: string, instant: number): number {
  const parts = new Intl.DateTimeFormat("en-US", { timeZone: zone, timeZoneName: "longOffset" }).formatToParts(instant);
  const named = parts.find(({ type }) => type === "timeZoneName")?.value ?? "GMT";
  const [, sign, hours = "0", minutes = "0"] = /GMT([+-])(\d{2}):?(\d{2})?/.exec(named) ?? [];
  return (sign === "-" ? -1 : 1) * (Number(hours) * 60 + Number(minutes));
}

const two = (n: number): string => String(n).padStart(2, "0");

/** An instant as it is entered: the site's own time with its offset, to the minute. */
export function instantText(instant: number, zone: string): string {
  const ahead = aheadOf(zone, instant);
  const offset = `${ahead < 0 ? "-" : "+"}${two(Math.floor(Math.abs(ahead) / 60))}:${two(Math.abs(ahead) % 60)}`;
  return `${new Date(instant + ahead * 60_000).toISOString().slice(0, 16)}${offset}`;
}

/** The instant that a day and time of the site means; of the two that an autumn night may have, the first. */
export function instantOf(dayAndTime: string, zone: string): number | undefined {
  const asUtc = Date.parse(`${dayAndTime}Z`);
  if (Number.isNaN(asUtc)) return undefined;
  const guess = asUtc - aheadOf(zone, asUtc) * 60_000;
  return asUtc - aheadOf(zone, guess) * 60_000;
}

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
