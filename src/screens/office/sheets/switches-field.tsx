import type { Json } from "../../../ledger/index.ts";
import { headed, useEditing } from "./editing.ts";
import type { ListProps } from "./entries.tsx";
import { ManyField } from "./plain-fields.tsx";

/** Which questions of the design switch it on or off. */
export function SwitchesField({ value, change }: Omit<ListProps, "label">) {
  const { sheet, sayer } = useEditing();
  const { on = [], off = [] } = (value ?? {}) as { readonly on?: readonly string[]; readonly off?: readonly string[] };
  const choices = sheet.switches.map(({ id, title }) => ({ value: id, title: sayer.words(title) || id }));
  const set = (next: { readonly on: readonly string[]; readonly off: readonly string[] }): void => {
    const said = Object.entries(next).filter(([, ids]) => ids.length > 0);
    change(said.length === 0 ? undefined : (Object.fromEntries(said) as unknown as Json));
  };
  return (
    <>
      <ManyField label={headed(sayer.field("switches/on"))} value={on} choices={choices} change={(ids) => set({ on: ids, off })} />
      <ManyField label={headed(sayer.field("switches/off"))} value={off} choices={choices} change={(ids) => set({ on, off: ids })} />
    </>
  );
}
