import { useSpeaking } from "../../parts/speaking.ts";
import type { ScreenWord } from "../../parts/words/index.ts";

/** What stands in a field when the page is opened. */
export type Field = (name: string) => string;

interface TypedProps {
  readonly name: string;
  readonly word: ScreenWord;
  readonly field: Field;
  readonly digits?: boolean;
}

/** A line of text, or a whole number. */
export function Typed({ name, word, field, digits = false }: TypedProps) {
  const { say } = useSpeaking();
  return (
    <label class="typed">
      {say(word)}
      <input
        type="text"
        name={name}
        defaultValue={field(name)}
        autoComplete="off"
        maxLength={digits ? 4 : 400}
        {...(digits ? { inputMode: "numeric", pattern: "\\d*" } : {})}
      />
    </label>
  );
}

interface ChosenProps {
  readonly name: string;
  readonly word: ScreenWord;
  readonly field: Field;
  readonly choices: readonly { readonly value: string; readonly title: string }[];
  readonly mayStayOpen?: boolean;
}

/** One of several, or not said. */
export function Chosen({ name, word, field, choices, mayStayOpen = true }: ChosenProps) {
  const { say } = useSpeaking();
  return (
    <label class="typed">
      {say(word)}
      <select class="target" name={name}>
        {mayStayOpen && <option value="">{say("after-not-said")}</option>}
        {choices.map(({ value, title }) => (
          <option key={value} value={value} selected={field(name) === value}>
            {title}
          </option>
        ))}
      </select>
    </label>
  );
}
