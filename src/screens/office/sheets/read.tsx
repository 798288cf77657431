import { useSpeaking } from "../../parts/speaking.ts";
import type { SheetTaken } from "../opening-sheet.ts";
import { EditingContext } from "./editing.ts";
import { Parts } from "./outline.tsx";
import { useDraft } from "./use-draft.ts";

/** A version of a tolerance sheet to be read, whichever it is: nothing of it can be changed. */
export function ReadSheet({ taken }: { readonly taken: SheetTaken }) {
  const { say } = useSpeaking();
  const draft = useDraft(taken.content, true);
  return (
    <EditingContext.Provider value={draft}>
      <p>{say("sheets-read-how")}</p>
      <Parts />
    </EditingContext.Provider>
  );
}
