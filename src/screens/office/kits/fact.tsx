import type { FigureAsked } from "../../../job/index.ts";
import type { Refusal } from "../../../outcome/index.ts";
import { refusalText, useSpeaking } from "../../parts/speaking.ts";
import { TextField, YesField } from "../sheets/plain-fields.tsx";
import { wordsIn } from "../words-in.ts";
import { type FactTyped, unitsOf } from "./card-typed.ts";
import { Curve } from "./curve.tsx";

interface FactProps {
  readonly figure: FigureAsked;
  readonly fact: FactTyped;
  readonly fault: Refusal | undefined;
  readonly change: (fact: FactTyped) => void;
}

/** One fact of the part's own paper: typed with its unit, in words, or named as unknown. */
export function Fact({ figure, fact, fault, change }: FactProps) {
  const { say, session } = useSpeaking();
  const title = wordsIn(figure.title, session.language) || figure.id;
  const said = `fault-${figure.id}`;
  const units = [...new Set([...unitsOf(figure), ...(fact.unit === "" ? [] : [fact.unit])])];
  return (
    <div class="fact">
      <TextField
        label={title}
        wrong={fault === undefined ? undefined : said}
        value={fact.text}
        change={(text) => change({ ...fact, text, unknown: false })}
      />
      {units.length > 0 && (
        <label class="typed">
          {say("kits-unit", { figure: title })}
          <select class="target" value={fact.unit} onChange={(event) => change({ ...fact, unit: event.currentTarget.value })}>
            {units.map((unit) => (
              <option key={unit} value={unit}>
                {unit}
              </option>
            ))}
          </select>
        </label>
      )}
      <YesField
        label={say("kits-unknown", { figure: title })}
        value={fact.unknown}
        change={(unknown) => change({ ...fact, unknown, text: unknown ? "" : fact.text })}
      />
      {fault !== undefined && (
        <p id={said} class="field-fault">
          {refusalText({ type: "", title: "", status: 422, detail: "", ...fault }, session)}
        </p>
      )}
      {figure.id === "pumpCurve" && <Curve text={fact.text} />}
    </div>
  );
}
