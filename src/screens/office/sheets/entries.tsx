import type { ComponentChildren } from "preact";
import type { Json } from "../../../ledger/index.ts";
import { useSpeaking } from "../../parts/speaking.ts";

export interface ListProps {
  readonly label: string;
  readonly value: Json | undefined;
  readonly change: (value: Json | undefined) => void;
}

/** Entries of a list, each with its own fields, one more at the end; they keep their order. */
export function Entries<T>({
  label,
  all,
  blank,
  change,
  children,
}: {
  readonly label: string;
  readonly all: readonly T[];
  readonly blank: () => T;
  readonly change: (all: readonly T[]) => void;
  readonly children: (one: T, set: (next: T) => void, place: string) => unknown;
}) {
  const { say } = useSpeaking();
  return (
    <fieldset class="entries">
      <legend>{label}</legend>
      {all.map((one, i) => {
        const place = `${label} ${i + 1}`;
        return (
          // entries have no names of their own: by their places, so that typing loses none
          <fieldset key={i}>
            <legend>{place}</legend>
            {children(one, (next) => change(all.map((other, j) => (j === i ? next : other))), place) as ComponentChildren}
            <button type="button" class="target" onClick={() => change(all.filter((_, j) => j !== i))}>
              {say("sheets-take-out", { name: place })}
            </button>
          </fieldset>
        );
      })}
      <button type="button" class="target" onClick={() => change([...all, blank()])}>
        {say("sheets-another")}: {label}
      </button>
    </fieldset>
  );
}
