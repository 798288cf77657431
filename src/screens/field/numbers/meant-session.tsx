import { useSpeaking } from "../../parts/speaking.ts";
import type { Meant } from "./session-meant.ts";

const kinds = ["rigid PVC", "flexible PVC"] as const;
const damps = ["dry", "humid"] as const;

/** A session that nobody has named yet: what is glued, how cold and how damp it will be, or the can's own time. */
export function MeantSession({ meant, onChange }: { readonly meant: Meant; readonly onChange: (meant: Meant) => void }) {
  const { say, session } = useSpeaking();
  return (
    <details>
      <summary class="target">{say("run-meant")}</summary>
      <div class="meant">
        <fieldset class="row-of-two">
          <legend>{say("run-pipe")}</legend>
          {kinds.map((kind) => (
            <button key={kind} type="button" class="target" aria-pressed={meant.kind === kind} onClick={() => onChange({ ...meant, kind })}>
              {say(`run-${kind}`)}
            </button>
          ))}
        </fieldset>
        <fieldset class="row-of-two">
          <legend>{say("run-air")}</legend>
          {damps.map((humidity) => (
            <button
              key={humidity}
              type="button"
              class="target"
              aria-pressed={meant.humidity === humidity}
              onClick={() => onChange({ ...meant, humidity })}
            >
              {say(`run-${humidity}`)}
            </button>
          ))}
        </fieldset>
        <label class="typed">
          {say("run-coldest", { unit: session.units === "inch" ? "°F" : "°C" })}
          <input
            type="text"
            inputMode="decimal"
            autoComplete="off"
            value={meant.coldest}
            onInput={(event) => onChange({ ...meant, coldest: event.currentTarget.value })}
          />
        </label>
        <label class="typed">
          {say("run-can")}
          <input
            type="text"
            inputMode="text"
            autoComplete="off"
            value={meant.can}
            onInput={(event) => onChange({ ...meant, can: event.currentTarget.value })}
          />
        </label>
      </div>
    </details>
  );
}
