import { useEffect, useMemo, useState } from "preact/hooks";
import { sheetFaults, type ToleranceSheet } from "../../../job/index.ts";
import type { Json } from "../../../ledger/index.ts";
import type { Refusal } from "../../../outcome/index.ts";
import { makeSheetSayer } from "../../../record/index.ts";
import type { SessionView } from "../../../wire/index.ts";
import { refusalText, useSpeaking } from "../../parts/speaking.ts";
import { added, changed, faultPlace, idOf, newThing, removed, shifted, withField } from "./draft.ts";
import { type Editing, type FaultSaid, keyOf, type Typed } from "./editing.ts";

/** How long somebody is let type before the whole sheet is judged again. */
const STILL_MS = 350;

const said = (sheet: ToleranceSheet, refusal: Refusal, session: SessionView): FaultSaid => ({
  ...faultPlace(sheet, refusal),
  says: refusalText({ type: "", title: "", status: 422, detail: "", ...refusal }, session),
});

/** Every fault of the sheet and of what was typed, as it would be found now. */
export function faultsNow(sheet: ToleranceSheet, typed: Readonly<Record<string, Typed>>, session: SessionView): readonly FaultSaid[] {
  const unread = Object.values(typed).flatMap(({ refusal }) => (refusal === undefined ? [] : [said(sheet, refusal, session)]));
  return [...unread, ...sheetFaults(sheet as unknown as Json).map((fault) => said(sheet, fault, session))];
}

export interface Draft extends Editing {
  /** After saving: what was typed is what was saved. */
  readonly settle: (sheet: ToleranceSheet) => void;
  /** Judges everything at once. */
  readonly judge: () => readonly FaultSaid[];
}

/** A tolerance sheet as it is typed: nothing is stored, and nothing that was typed is lost until the page is left. */
export function useDraft(first: ToleranceSheet, readOnly = false): Draft {
  const { session } = useSpeaking();
  const [sheet, setSheet] = useState(first);
  const [still, setStill] = useState(first);
  const [typed, setTyped] = useState<Readonly<Record<string, Typed>>>({});
  const [opened, open] = useState<string>();
  const [faults, setFaults] = useState<readonly FaultSaid[]>([]);
  const sayer = useMemo(() => makeSheetSayer(session, [sheet]), [session, sheet]);
  useEffect(() => {
    const timer = setTimeout(() => {
      setStill(sheet);
      setFaults(faultsNow(sheet, typed, session));
    }, STILL_MS);
    return () => clearTimeout(timer);
  }, [sheet, typed, session]);
  return {
    sheet,
    still,
    sayer,
    typed,
    faults,
    opened,
    readOnly,
    open,
    change: (list, id, field, value) => {
      setSheet((now) => changed(now, list, id, field, value));
      // a symptom is the name of its callback
      if (field === "symptom" && typeof value === "string") open(keyOf(list, value));
    },
    changeSheet: (field, value) => setSheet((now) => withField(now as never, field, value) as unknown as ToleranceSheet),
    type: (key, one) => setTyped((now) => ({ ...now, [key]: one })),
    add: (kind, step) => {
      const { list, thing } = newThing(sheet, kind, step);
      setSheet((now) => added(now, list, thing));
      open(keyOf(list, idOf(thing)));
    },
    remove: (list, id) => {
      setSheet((now) => removed(now, list, id));
      setTyped((now) => Object.fromEntries(Object.entries(now).filter(([key]) => !key.startsWith(`${keyOf(list, id)}/`))));
      open(undefined);
    },
    shift: (list, id, by) => setSheet((now) => shifted(now, list, id, by)),
    settle: (saved) => {
      setSheet(saved);
      setStill(saved);
      setTyped({});
    },
    judge: () => {
      const all = faultsNow(sheet, typed, session);
      setFaults(all);
      return all;
    },
  };
}
