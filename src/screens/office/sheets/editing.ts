import { createContext } from "preact";
import { useContext } from "preact/hooks";
import type { SheetList, ToleranceSheet } from "../../../job/index.ts";
import type { Json } from "../../../ledger/index.ts";
import type { Refusal } from "../../../outcome/index.ts";
import type { SheetSayer } from "../../../record/index.ts";
import type { NewKind } from "./draft.ts";

/** What somebody typed that is not read yet, or could not be: it stays as it was typed. */
export interface Typed {
  readonly text: string;
  readonly refusal?: Refusal;
}

/** A fault with the sentence that says how to mend it. */
export interface FaultSaid {
  readonly list?: SheetList;
  readonly id?: string;
  readonly field: string;
  readonly says: string;
}

/** What every part of the page needs: the sheet as it is typed, and the ways to change it. */
export interface Editing {
  readonly sheet: ToleranceSheet;
  /** The same as it was when somebody last paused: what takes longer is worked out from this. */
  readonly still: ToleranceSheet;
  readonly sayer: SheetSayer;
  readonly typed: Readonly<Record<string, Typed>>;
  readonly faults: readonly FaultSaid[];
  /** The one thing that is open. */
  readonly opened: string | undefined;
  /** An older version, to be read: nothing of it can be changed. */
  readonly readOnly: boolean;
  readonly open: (key: string | undefined) => void;
  readonly change: (list: SheetList, id: string, field: string, value: Json | undefined) => void;
  readonly changeSheet: (field: string, value: Json | undefined) => void;
  readonly type: (key: string, typed: Typed) => void;
  readonly add: (kind: NewKind, step?: string) => void;
  readonly remove: (list: SheetList, id: string) => void;
  readonly shift: (list: SheetList, id: string, by: -1 | 1) => void;
}

export const keyOf = (list: SheetList, id: string, field = ""): string => `${list}/${id}${field === "" ? "" : `/${field}`}`;

/** A label begins a line. */
export const headed = (words: string): string => words.charAt(0).toUpperCase() + words.slice(1);

export const EditingContext = createContext<Editing | undefined>(undefined);

export function useEditing(): Editing {
  const editing = useContext(EditingContext);
  if (editing === undefined) throw new Error("a part of a tolerance sheet outside its page");
  return editing;
}
