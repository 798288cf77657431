import type { CallbackLook, Words } from "../../../job/index.ts";
import type { Json } from "../../../ledger/index.ts";
import { useSpeaking } from "../../parts/speaking.ts";
import { useEditing } from "./editing.ts";
import { Entries, type ListProps } from "./entries.tsx";
import { ChoiceField, WordsField } from "./plain-fields.tsx";

/** What is asked by telephone. */
export function AsksField({ label, value, change }: ListProps) {
  return (
    <Entries
      label={label}
      all={(value ?? []) as unknown as readonly Words[]}
      blank={(): Words => ({ en: "" })}
      change={(next) => change(next as unknown as Json)}
    >
      {(one, set, place) => (
        <WordsField label={place} value={one as unknown as Json} change={(words) => set((words ?? { en: "" }) as unknown as Words)} />
      )}
    </Entries>
  );
}

/** What of the job's own record is looked at first. */
export function LooksField({ label, value, change }: ListProps) {
  const { say } = useSpeaking();
  const { sheet, sayer } = useEditing();
  const choices = [
    ...sheet.checks.map(({ id, title }) => ({ value: `check ${id}`, title: sayer.words(title) || id })),
    ...sheet.items.map(({ id, title }) => ({ value: `item ${id}`, title: sayer.words(title) || id })),
  ];
  const chosen = ({ check, item }: CallbackLook): string =>
    check !== undefined ? `check ${check}` : item !== undefined ? `item ${item}` : "";
  return (
    <Entries
      label={label}
      all={(value ?? []) as unknown as readonly CallbackLook[]}
      blank={(): CallbackLook => ({ why: { en: "" } })}
      change={(next) => change(next as unknown as Json)}
    >
      {(one, set, place) => (
        <>
          <ChoiceField
            label={`${place}: ${sayer.field("items")}`}
            value={chosen(one)}
            none={say("sheets-not-said")}
            choices={choices}
            change={(of) => {
              const [list, id] = [of.slice(0, of.indexOf(" ")), of.slice(of.indexOf(" ") + 1)];
              set({ ...(list === "check" ? { check: id } : list === "item" ? { item: id } : {}), why: one.why });
            }}
          />
          <WordsField
            label={`${place}: ${sayer.field("why")}`}
            value={one.why as unknown as Json}
            change={(why) => set({ ...one, why: (why ?? { en: "" }) as unknown as Words })}
          />
        </>
      )}
    </Entries>
  );
}
