import { limitStanding, type SheetList } from "../../../job/index.ts";
import type { QuantityKind } from "../../../units/index.ts";
import { refusalText, useSpeaking } from "../../parts/speaking.ts";
import { idOf, type Thing } from "./draft.ts";
import { keyOf, useEditing } from "./editing.ts";
import { fieldsOf } from "./fields.ts";
import { ThingField } from "./thing-field.tsx";

interface ThingProps {
  readonly list: SheetList;
  readonly thing: Thing;
}

/** What a thing is called in a list. */
export function useTitle(): (thing: Thing) => string {
  const { say } = useSpeaking();
  const { sayer } = useEditing();
  return (thing) => {
    const own = sayer.words((thing.title ?? thing.text) as never);
    return own || (typeof thing.symptom === "string" ? sayer.value(thing.symptom) : "") || `${idOf(thing)}: ${say("sheets-unnamed")}`;
  };
}

/** Whether the check's limits can be decided, as somebody types them. */
function Decided({ thing }: { readonly thing: Thing }) {
  const { say, session } = useSpeaking();
  const { sheet, sayer } = useEditing();
  const standing = limitStanding(sheet, idOf(thing));
  const text = sayer.standing(standing, thing.kind as QuantityKind, (fault) =>
    refusalText({ type: "", title: "", status: 422, detail: "", ...fault }, session),
  );
  return (
    <p role="status" class={`decided ${standing.is === "at fault" ? "at-fault" : ""}`}>
      <b>{say("sheets-decide")}</b> {text}
    </p>
  );
}

/** The fields of one thing, and the ways to move it and to take it out. */
export function ThingForm({ list, thing }: ThingProps) {
  const { say } = useSpeaking();
  const { remove, shift, faults, readOnly } = useEditing();
  const id = idOf(thing);
  const shown = fieldsOf[list].filter(({ when }) => when === undefined || when(thing));
  const further = shown.filter(({ further: later }) => later === true);
  const known = new Set(fieldsOf[list].map(({ name }) => name));
  const elsewhere = faults.filter((fault) => fault.list === list && fault.id === id && !known.has(fault.field));
  return (
    <div class="line-form opening">
      {list === "checks" && <Decided thing={thing} />}
      {list !== "checks" &&
        elsewhere.map(({ says }) => (
          <p key={says} class="field-fault">
            {says}
          </p>
        ))}
      <fieldset class="whole" disabled={readOnly}>
        <div class="figures-typed">
          {shown
            .filter(({ further: later }) => later !== true)
            .map((of) => (
              <ThingField key={of.name} list={list} thing={thing} of={of} />
            ))}
        </div>
        {further.length > 0 && (
          <details
            open={further.some(({ name }) => faults.some((fault) => fault.list === list && fault.id === id && fault.field === name))}
          >
            <summary class="target">{say("sheets-more")}</summary>
            <div class="figures-typed">
              {further.map((of) => (
                <ThingField key={of.name} list={list} thing={thing} of={of} />
              ))}
            </div>
          </details>
        )}
      </fieldset>
      {(thing.ways !== undefined || thing.weather !== undefined || thing.wins !== undefined) && <p>{say("sheets-not-on-page")}</p>}
      {!readOnly && (
        <p class="looking-keys">
          <button type="button" class="target" onClick={() => shift(list, id, -1)}>
            {say("sheets-up")}
          </button>
          <button type="button" class="target" onClick={() => shift(list, id, 1)}>
            {say("sheets-down")}
          </button>
          <button type="button" class="target" onClick={() => remove(list, id)}>
            {say("sheets-remove")}
          </button>
        </p>
      )}
    </div>
  );
}

/** One line of a list; opened, its fields stand below it. */
export function ThingRow({ list, thing }: ThingProps) {
  const { say } = useSpeaking();
  const { opened, open, faults, sayer } = useEditing();
  const title = useTitle();
  const id = idOf(thing);
  const key = keyOf(list, id);
  const isOpen = opened === key;
  const isWrong = faults.some((fault) => fault.list === list && fault.id === id);
  const words = [list === "items" ? thing.kind : undefined, thing.weight].flatMap((word) =>
    typeof word === "string" ? [sayer.value(word)] : [],
  );
  const beside = list === "steps" ? [say("sheets-step-itself")] : words;
  return (
    <li class={isOpen ? "sheet-line open" : "sheet-line"}>
      <button type="button" id={`open-${key}`} class="target" aria-expanded={isOpen} onClick={() => open(isOpen ? undefined : key)}>
        <span>
          {title(thing)}
          {beside.length > 0 && <small>{beside.join(" · ")}</small>}
        </span>
        {isWrong && (
          <b class="wrong-mark" aria-hidden="true">
            !
          </b>
        )}
      </button>
      {isOpen && <ThingForm list={list} thing={thing} />}
    </li>
  );
}
