import { type Choice as Answer, type ChoiceMeaning, choiceMeanings, type OneOf, type Words } from "../../../job/index.ts";
import type { Json } from "../../../ledger/index.ts";
import { useSpeaking } from "../../parts/speaking.ts";
import { useEditing } from "./editing.ts";
import { Entries, type ListProps } from "./entries.tsx";
import { ChoiceField, ManyField, WordsField, YesField } from "./plain-fields.tsx";

const freeId = (all: readonly { readonly id: string }[]): string => {
  for (let i = 1; ; i += 1) if (!all.some(({ id }) => id === `answer-${i}`)) return `answer-${i}`;
};

/** The answers of an item. */
export function AnswersField({ label, value, change }: ListProps) {
  const { say } = useSpeaking();
  const { sheet, sayer } = useEditing();
  const all = (value ?? []) as unknown as readonly Answer[];
  const without = (one: Answer, field: "means" | "caution"): Answer => {
    const { [field]: _, ...rest } = one;
    return rest;
  };
  return (
    <Entries
      label={label}
      all={all}
      blank={(): Answer => ({ id: freeId(all), title: { en: "" }, accepts: true })}
      change={(next) => change(next as unknown as Json)}
    >
      {(one, set, place) => (
        <>
          <WordsField
            label={`${place}, ${sayer.field("title")}`}
            value={one.title as unknown as Json}
            change={(title) => set({ ...one, title: (title ?? { en: "" }) as unknown as Words })}
          />
          <YesField label={`${place}: ${sayer.field("accepts")}`} value={one.accepts} change={(accepts) => set({ ...one, accepts })} />
          <ManyField
            label={`${place}: ${sayer.field("means")}`}
            value={one.means ?? []}
            choices={choiceMeanings.map((of) => ({ value: of, title: sayer.value(of) }))}
            change={(means) => set(means.length === 0 ? without(one, "means") : { ...one, means: means as readonly ChoiceMeaning[] })}
          />
          <ChoiceField
            label={`${place}: ${sayer.field("caution")}`}
            value={one.caution ?? ""}
            none={say("sheets-not-said")}
            choices={sheet.cautions.map(({ id, text }) => ({ value: id, title: sayer.words(text) }))}
            change={(caution) => set(caution === "" ? without(one, "caution") : { ...one, caution })}
          />
        </>
      )}
    </Entries>
  );
}

/** Groups of items of which one whole group is enough. */
export function GroupsField({ label, value, change }: ListProps) {
  const { sheet, sayer } = useEditing();
  const items = sheet.items.map((item) => ({ value: item.id, title: sayer.words(item.title) || item.id }));
  return (
    <Entries
      label={label}
      all={(value ?? []) as unknown as OneOf["groups"]}
      blank={(): OneOf["groups"][number] => ({ title: { en: "" }, items: [] })}
      change={(next) => change(next as unknown as Json)}
    >
      {(one, set, place) => (
        <>
          <WordsField
            label={`${place}, ${sayer.field("title")}`}
            value={one.title as unknown as Json}
            change={(title) => set({ ...one, title: (title ?? { en: "" }) as unknown as Words })}
          />
          <ManyField
            label={`${place}: ${sayer.field("items")}`}
            value={one.items}
            choices={items}
            change={(all) => set({ ...one, items: all })}
          />
        </>
      )}
    </Entries>
  );
}
