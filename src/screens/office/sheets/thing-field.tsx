import type { SheetList } from "../../../job/index.ts";
import type { Json } from "../../../ledger/index.ts";
import type { QuantityKind } from "../../../units/index.ts";
import { useSpeaking } from "../../parts/speaking.ts";
import { AnswersField, GroupsField } from "./answers-field.tsx";
import { AsksField, LooksField } from "./callback-fields.tsx";
import { idOf, type Thing, thingsOf } from "./draft.ts";
import { headed, keyOf, useEditing } from "./editing.ts";
import type { FieldOf, Options } from "./fields.ts";
import { LimitField, QuantityField } from "./limit-field.tsx";
import { type Choice, ChoiceField, ManyField, TextField, WordsField, YesField } from "./plain-fields.tsx";
import { SwitchesField } from "./switches-field.tsx";

/** What a field offers, in words. */
function useChoices(): (of: Options) => readonly Choice[] {
  const { sheet, sayer } = useEditing();
  return (of) => {
    if ("words" in of)
      return of.words.map((value) => ({
        value,
        title: value === "true" ? sayer.text("yes") : value === "false" ? sayer.text("no") : sayer.value(value),
      }));
    const things = thingsOf(sheet, of.list).map((thing) => ({
      value: idOf(thing),
      title: sayer.words((thing.title ?? thing.text) as never) || idOf(thing),
    }));
    return [...(of.also ?? []).map((value) => ({ value, title: sayer.value(value) })), ...things];
  };
}

interface ThingFieldProps {
  readonly list: SheetList;
  readonly thing: Thing;
  readonly of: FieldOf;
}

/** Fields that the shape asks for: emptied they stay, as nothing at all, so that the fault names them. */
const neverGone: ReadonlySet<string> = new Set(["title", "text", "done", "unit"]);

/** One field of a thing of the sheet, in the way it is typed. */
export function ThingField({ list, thing, of: { name, form } }: ThingFieldProps) {
  const { say } = useSpeaking();
  const { sayer, change: changeThing, faults } = useEditing();
  const choicesOf = useChoices();
  const id = idOf(thing);
  const value = thing[name];
  const label = headed(sayer.field(name));
  const own = faults.filter((fault) => fault.list === list && fault.id === id && fault.field === name);
  const said = `${keyOf(list, id, name)}-fault`;
  const wrong = own.length > 0 ? said : undefined;
  const change = (next: Json | undefined): void => changeThing(list, id, name, next ?? (neverGone.has(name) ? { en: "" } : undefined));
  const list_ = (value ?? []) as readonly string[];
  const shared = { label, wrong };
  const none = say("sheets-not-said");
  const field = () => {
    switch (form.as) {
      case "words":
        return <WordsField {...shared} value={value} change={change} />;
      case "text":
        return <TextField {...shared} value={String(value ?? "")} change={(text) => change(text === "" ? undefined : text)} />;
      case "whole":
        return (
          <TextField {...shared} value={String(value ?? "")} change={(text) => change(/^\d{1,6}$/.test(text) ? Number(text) : text)} />
        );
      case "yes":
        return <YesField {...shared} value={value === true} change={(yes) => change(yes ? true : undefined)} />;
      case "unit": {
        const { inch = "", metric = "" } = (value ?? {}) as { readonly inch?: string; readonly metric?: string };
        return (
          <>
            <TextField
              {...shared}
              label={headed(sayer.field("unit/inch"))}
              value={inch}
              change={(text) => change({ inch: text, metric })}
            />
            <TextField
              {...shared}
              label={headed(sayer.field("unit/metric"))}
              value={metric}
              change={(text) => change({ inch, metric: text })}
            />
          </>
        );
      }
      case "quantity":
        return (
          <QuantityField
            {...shared}
            list={list}
            id={id}
            field={name}
            kind={form.kind}
            value={value as number | undefined}
            change={change}
          />
        );
      case "limit":
        return <LimitField {...shared} list={list} id={id} field={name} kind={thing.kind as QuantityKind} value={value} change={change} />;
      case "one": {
        const isYesNo = typeof value === "boolean";
        const set = (one: string): void => change(one === "" ? undefined : isYesNo ? one === "true" : one);
        return (
          <ChoiceField
            {...shared}
            value={String(value ?? "")}
            none={form.always ? undefined : none}
            choices={choicesOf(form.of)}
            change={set}
          />
        );
      }
      case "many": {
        // an empty list that need not be there goes
        const set = (ids: readonly string[]): void =>
          change(ids.length === 0 && ["minus", "bucket", "conditions"].includes(name) ? undefined : ids);
        return <ManyField {...shared} value={list_} choices={choicesOf(form.of)} change={set} />;
      }
      case "switches":
        return <SwitchesField value={value} change={change} />;
      case "answers":
        return <AnswersField label={label} value={value} change={change} />;
      case "groups":
        return <GroupsField label={label} value={value} change={change} />;
      case "asks":
        return <AsksField label={label} value={value} change={change} />;
      case "looks":
        return <LooksField label={label} value={value} change={change} />;
    }
  };
  return (
    <>
      {field()}
      {own.length > 0 && (
        <p id={said} class="field-fault">
          {own.map(({ says }) => says).join(" ")}
        </p>
      )}
    </>
  );
}
