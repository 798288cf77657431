import type { Json } from "../../../ledger/index.ts";
import { useSpeaking } from "../../parts/speaking.ts";

interface Labelled {
  readonly label: string;
  /** What is wrong with it, by the id of the sentence. */
  readonly wrong?: string | undefined;
}

/** One line or several, as typed. */
export function TextField({
  label,
  wrong,
  value,
  long = false,
  change,
}: Labelled & { readonly value: string; readonly long?: boolean; readonly change: (text: string) => void }) {
  const shared = { value, "aria-invalid": wrong !== undefined, "aria-describedby": wrong };
  return (
    // biome-ignore lint/a11y/noLabelWithoutControl: whichever of the two is drawn stands inside its label
    <label class="typed">
      {label}
      {long ? (
        <textarea rows={3} maxLength={2000} {...shared} onInput={(event) => change(event.currentTarget.value)} />
      ) : (
        <input type="text" maxLength={2000} autoComplete="off" {...shared} onInput={(event) => change(event.currentTarget.value)} />
      )}
    </label>
  );
}

/** A wording in both languages. Nothing in Spanish: the field is gone, and the English words stand for it. */
export function WordsField({
  label,
  wrong,
  value,
  change,
}: Labelled & { readonly value: Json | undefined; readonly change: (value: Json | undefined) => void }) {
  const { say } = useSpeaking();
  const { en = "", es = "" } = (value ?? {}) as { readonly en?: string; readonly es?: string };
  const set = (next: { readonly en: string; readonly es: string }): void => {
    if (next.en === "" && next.es === "") change(undefined);
    else change(next.es === "" ? { en: next.en } : next);
  };
  return (
    <>
      <TextField
        label={`${label} · ${say("opening-language-en")}`}
        wrong={wrong}
        value={en}
        long={en.length > 60}
        change={(text) => set({ en: text, es })}
      />
      <TextField
        label={`${label} · ${say("opening-language-es")}`}
        wrong={wrong}
        value={es}
        long={es.length > 60}
        change={(text) => set({ en, es: text })}
      />
    </>
  );
}

/** Yes, or nothing said. */
export const YesField = ({ label, value, change }: Labelled & { readonly value: boolean; readonly change: (value: boolean) => void }) => (
  <label class="target">
    <input type="checkbox" checked={value} onChange={(event) => change(event.currentTarget.checked)} /> {label}
  </label>
);

export interface Choice {
  readonly value: string;
  readonly title: string;
}

/** One of several; `none`: what stands for nothing chosen, absent where one must be. */
export const ChoiceField = ({
  label,
  wrong,
  value,
  choices,
  none,
  change,
}: Labelled & {
  readonly value: string;
  readonly choices: readonly Choice[];
  readonly none?: string | undefined;
  readonly change: (value: string) => void;
}) => (
  <label class="typed">
    {label}
    <select
      class="target"
      value={value}
      aria-invalid={wrong !== undefined}
      aria-describedby={wrong}
      onChange={(event) => change(event.currentTarget.value)}
    >
      {(none !== undefined || value === "") && <option value="">{none ?? ""}</option>}
      {value !== "" && !choices.some((choice) => choice.value === value) && <option value={value}>{value}</option>}
      {choices.map((choice) => (
        <option key={choice.value} value={choice.value}>
          {choice.title}
        </option>
      ))}
    </select>
  </label>
);

/** Several, in their order: each can be taken out, and one more chosen. */
export function ManyField({
  label,
  wrong,
  value,
  choices,
  change,
}: Labelled & {
  readonly value: readonly string[];
  readonly choices: readonly Choice[];
  readonly change: (value: readonly string[]) => void;
}) {
  const { say } = useSpeaking();
  const titleOf = (one: string): string => choices.find((choice) => choice.value === one)?.title ?? one;
  const left = choices.filter((choice) => !value.includes(choice.value));
  return (
    <fieldset class="many">
      <legend>{label}</legend>
      {value.length > 0 && (
        <ul>
          {value.map((one) => (
            <li key={one}>
              <button type="button" class="target" onClick={() => change(value.filter((other) => other !== one))}>
                {say("sheets-take-out", { name: titleOf(one) })}
              </button>
            </li>
          ))}
        </ul>
      )}
      {left.length > 0 && (
        <ChoiceField
          label={say("sheets-choose")}
          wrong={wrong}
          value=""
          none={say("sheets-not-said")}
          choices={left}
          change={(one) => one !== "" && change([...value, one])}
        />
      )}
    </fieldset>
  );
}
