import { type LimitFigure, type LimitFunction, limitFunctions, type SheetList } from "../../../job/index.ts";
import type { Json } from "../../../ledger/index.ts";
import type { QuantityKind } from "../../../units/index.ts";
import { refusalText, useSpeaking } from "../../parts/speaking.ts";
import { keyOf, useEditing } from "./editing.ts";
import { ChoiceField, ManyField, TextField } from "./plain-fields.tsx";
import { quantityTyped } from "./typed-quantity.ts";

interface QuantityProps {
  readonly label: string;
  readonly list: SheetList;
  readonly id: string;
  readonly field: string;
  readonly kind: QuantityKind;
  readonly value: number | undefined;
  readonly wrong?: string | undefined;
  readonly change: (value: number | undefined) => void;
}

/** A figure in the company's units; what cannot be read stays as it was typed, with the reason beside it. */
export function QuantityField({ label, list, id, field, kind, value, wrong, change }: QuantityProps) {
  const { session } = useSpeaking();
  const { sayer, typed, type } = useEditing();
  const key = keyOf(list, id, field);
  const known = typed[key];
  const refusal = known?.refusal;
  const said = `${key}-unread`;
  const set = (text: string): void => {
    const read = quantityTyped(text, kind, session.units, `sheet/${key}`);
    type(key, read.is === "refused" ? { text, refusal: read.refusal } : { text });
    if (read.is !== "refused") change(read.is === "value" ? read.value : undefined);
  };
  return (
    <div>
      <TextField
        label={label}
        wrong={refusal === undefined ? wrong : said}
        value={known?.text ?? (value === undefined ? "" : sayer.quantity(kind, value))}
        change={set}
      />
      {refusal !== undefined && (
        <p id={said} class="field-fault">
          {refusalText({ type: "", title: "", status: 422, detail: "", ...refusal }, session)}
        </p>
      )}
    </div>
  );
}

type Named = Exclude<LimitFigure, number>;
const typedFor: readonly LimitFunction[] = ["as typed", "set time", "cure time"];
const answered: readonly LimitFunction[] = ["set time", "cure time", "water left inside"];

interface LimitProps extends Omit<QuantityProps, "value" | "change"> {
  readonly value: Json | undefined;
  readonly change: (value: Json | undefined) => void;
}

/** An aim or a limit: nothing, a figure, or what design, kit card or can say, and so much more or less. */
export function LimitField({ label, value, change, ...of }: LimitProps) {
  const { say } = useSpeaking();
  const { sheet, sayer } = useEditing();
  const limit = value as LimitFigure | undefined;
  const named = typeof limit === "object" ? limit : undefined;
  const { kind } = of;
  const set = (fields: Partial<Named>): void => {
    const next = Object.entries({ ...named, ...fields }).filter(([, one]) => one !== undefined && one !== "");
    change(Object.fromEntries(next) as unknown as Json);
  };
  const way = limit === undefined ? "" : (named?.function ?? "number");
  const items = sheet.items.map((item) => ({ value: item.id, title: sayer.words(item.title) || item.id }));
  return (
    <fieldset class="limit">
      <legend>{label}</legend>
      <ChoiceField
        label={say("sheets-limit-way")}
        wrong={of.wrong}
        value={way}
        none={say("sheets-not-said")}
        choices={[
          { value: "number", title: say("sheets-limit-number") },
          ...limitFunctions.map((one) => ({ value: one, title: sayer.value(one) })),
        ]}
        change={(one) => {
          if (one === "") change(undefined);
          else if (one === "number") change(0);
          else change({ function: one });
        }}
      />
      {way === "number" && (
        <QuantityField
          {...of}
          label={say("sheets-figure-typed", { field: label })}
          value={limit as number}
          change={(one) => change(one ?? 0)}
        />
      )}
      {named !== undefined && (
        <>
          {named.function === "design figure" && (
            <ChoiceField
              label={`${label}: ${sayer.field("figure")}`}
              value={named.figure ?? ""}
              none={say("sheets-not-said")}
              choices={sheet.figures.filter((one) => one.kind === kind).map((one) => ({ value: one.id, title: sayer.words(one.title) }))}
              change={(figure) => set({ figure })}
            />
          )}
          {typedFor.includes(named.function) && (
            <ChoiceField
              label={`${label}: ${sayer.field("item")}`}
              value={named.item ?? ""}
              none={say("sheets-not-said")}
              choices={items}
              change={(item) => set({ item })}
            />
          )}
          {answered.includes(named.function) && (
            <ManyField
              label={`${label}: ${sayer.field("items")}`}
              value={named.items ?? []}
              choices={items}
              change={(all) => set({ items: all })}
            />
          )}
          <QuantityField
            {...of}
            field={`${of.field}/offset`}
            label={`${label}: ${sayer.field("offset")}`}
            value={named.offset}
            change={(offset) => {
              const { offset: _, ...rest } = named;
              change((offset === undefined ? rest : { ...rest, offset }) as unknown as Json);
            }}
          />
        </>
      )}
    </fieldset>
  );
}
