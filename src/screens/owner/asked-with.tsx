import { useSpeaking } from "../parts/speaking.ts";
import type { ScreenWord } from "../parts/words/index.ts";

/** Questions that compare persons where the owner asks for it. */
const comparesPersons: ReadonlySet<string> = new Set(["foremen", "readings-that-carry-nothing", "taught"]);
const sampled = [
  ["lot", "owner-lot"],
  ["looked", "owner-looked"],
  ["off", "owner-off"],
] as const satisfies readonly (readonly [string, ScreenWord])[];
const days = [
  ["from", "owner-from"],
  ["to", "owner-to"],
] as const satisfies readonly (readonly [string, ScreenWord])[];

interface AskedWithProps {
  readonly question: string;
  /** What stands behind the question mark of the address. */
  readonly onAsk: (query: string) => void;
}

/** What a question is asked with: its days, persons, the figures of a sample. */
export function AskedWith({ question, onAsk }: AskedWithProps) {
  const { say } = useSpeaking();
  const fields: readonly (readonly [string, ScreenWord])[] = question === "sampling" ? sampled : days;
  const submit = (event: SubmitEvent): void => {
    event.preventDefault();
    const given = new FormData(event.currentTarget as HTMLFormElement);
    const query = new URLSearchParams();
    for (const [name, value] of given) if (typeof value === "string" && value.trim() !== "") query.set(name, value.trim());
    onAsk(query.toString());
  };
  return (
    <form class="asked-with" onSubmit={submit}>
      {question !== "sampling" && <p>{say("owner-days")}</p>}
      {fields.map(([name, word]) => (
        <label key={name} class="typed">
          {say(word)}
          <input
            name={name}
            {...(question === "sampling" ? { type: "text", inputMode: "numeric", autoComplete: "off" } : { type: "date" })}
          />
        </label>
      ))}
      {comparesPersons.has(question) && (
        <>
          <label class="target">
            <input name="persons" type="checkbox" value="yes" /> {say("owner-persons")}
          </label>
          <p>{say("owner-persons-why")}</p>
        </>
      )}
      <button type="submit" class="target main">
        {say("owner-ask")}
      </button>
    </form>
  );
}
