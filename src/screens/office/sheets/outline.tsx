import type { ComponentChildren } from "preact";
import { useState } from "preact/hooks";
import type { SheetList, Step } from "../../../job/index.ts";
import { cementTables } from "../../../plumbing/index.ts";
import { useSpeaking } from "../../parts/speaking.ts";
import { idOf, type NewKind, type Thing, thingsOf } from "./draft.ts";
import { headed, useEditing } from "./editing.ts";
import { ChoiceField, WordsField } from "./plain-fields.tsx";
import { ThingRow, useTitle } from "./thing.tsx";

/** A part of the sheet that is drawn only while it is open: a sheet has hundreds of lines. */
function Part({
  title,
  beside,
  hasOpen,
  children,
}: {
  readonly title: string;
  readonly beside?: string;
  readonly hasOpen: boolean;
  readonly children: () => ComponentChildren;
}) {
  const [toggled, setToggled] = useState(false);
  const isOpen = toggled || hasOpen;
  return (
    <details class="step" open={isOpen} onToggle={(event) => setToggled(event.currentTarget.open)}>
      <summary class="target">
        <span class="step-name">
          <b>{title}</b>
          {beside !== undefined && <span>{beside}</span>}
        </span>
      </summary>
      <div class="inside">{isOpen && children()}</div>
    </details>
  );
}

const Rows = ({ list, things }: { readonly list: SheetList; readonly things: readonly Thing[] }) => (
  <ul class="sheet-lines">
    {things.map((thing) => (
      <ThingRow key={idOf(thing)} list={list} thing={thing} />
    ))}
  </ul>
);

const addable = ["picture", "reading", "answer", "check"] as const;

/** One step with its items and checks. */
function StepPart({ step }: { readonly step: Step }) {
  const { say } = useSpeaking();
  const { sheet, opened, add, readOnly } = useEditing();
  const title = useTitle();
  const of = (list: "items" | "checks"): readonly Thing[] => thingsOf(sheet, list).filter((thing) => thing.step === step.id);
  const [items, checks] = [of("items"), of("checks")];
  const own = step as unknown as Thing;
  const keys = new Set([`steps/${step.id}`, ...items.map((one) => `items/${idOf(one)}`), ...checks.map((one) => `checks/${idOf(one)}`)]);
  return (
    <Part
      title={`${step.number} · ${title(own)}`}
      beside={say("sheets-counts", { items: items.length, checks: checks.length })}
      hasOpen={opened !== undefined && keys.has(opened)}
    >
      {() => (
        <>
          <Rows list="steps" things={[own]} />
          <Rows list="items" things={items} />
          <Rows list="checks" things={checks} />
          {!readOnly && (
            <p class="looking-keys">
              {addable.map((kind) => (
                <button key={kind} type="button" class="target" onClick={() => add(kind, step.id)}>
                  {say(`sheets-add-${kind}`)}
                </button>
              ))}
            </p>
          )}
        </>
      )}
    </Part>
  );
}

/** The lists beside the steps, in the order in which somebody would look for them. */
const otherLists = [
  "coverings",
  "cautions",
  "callbacks",
  "beforehand",
  "tagSets",
  "oneOf",
  "switches",
  "figures",
  "instruments",
  "placings",
] as const satisfies readonly Exclude<NewKind, "picture" | "reading" | "answer" | "check">[];

function ListPart({ list }: { readonly list: (typeof otherLists)[number] }) {
  const { say } = useSpeaking();
  const { sheet, opened, add, readOnly } = useEditing();
  const things = thingsOf(sheet, list);
  return (
    <Part title={say(`sheets-part-${list}`)} beside={String(things.length)} hasOpen={opened?.startsWith(`${list}/`) === true}>
      {() => (
        <>
          <Rows list={list} things={things} />
          {!readOnly && (
            <p class="looking-keys">
              <button type="button" class="target" onClick={() => add(list)}>
                {say("sheets-add-one")}
              </button>
            </p>
          )}
        </>
      )}
    </Part>
  );
}

/** Title and cure table. */
function Itself() {
  const { say } = useSpeaking();
  const { sheet, sayer, changeSheet, faults, readOnly } = useEditing();
  const wrong = faults.filter((fault) => fault.list === undefined);
  return (
    <section class="opening">
      <h2>{say("sheets-part-itself")}</h2>
      <fieldset class="whole" disabled={readOnly}>
        <div class="figures-typed">
          <WordsField
            label={headed(sayer.field("title"))}
            wrong={wrong.some(({ field }) => field === "title") ? "itself-fault" : undefined}
            value={sheet.title as never}
            change={(title) => changeSheet("title", title ?? { en: "" })}
          />
          <ChoiceField
            label={headed(sayer.field("cureTable"))}
            value={sheet.cureTable ?? ""}
            none={say("sheets-not-said")}
            choices={Object.entries(cementTables).map(([value, table]) => ({ value, title: `${value}: ${table.title}` }))}
            change={(table) => changeSheet("cureTable", table === "" ? undefined : table)}
          />
        </div>
      </fieldset>
      {wrong.length > 0 && (
        <p id="itself-fault" class="field-fault">
          {wrong.map(({ says }) => says).join(" ")}
        </p>
      )}
    </section>
  );
}

/** The whole sheet: itself, its steps, and the lists beside them. */
export function Parts() {
  const { say } = useSpeaking();
  const { sheet, add, readOnly } = useEditing();
  return (
    <div class="sheet-parts">
      <Itself />
      <section>
        <h2>{say("sheets-part-steps")}</h2>
        <div class="steps">
          {sheet.steps.map((step) => (
            <StepPart key={step.id} step={step} />
          ))}
        </div>
        {!readOnly && (
          <p class="looking-keys">
            <button type="button" class="target" onClick={() => add("steps")}>
              {say("sheets-add-step")}
            </button>
          </p>
        )}
        <div class="steps">
          {otherLists.map((list) => (
            <ListPart key={list} list={list} />
          ))}
        </div>
      </section>
    </div>
  );
}
