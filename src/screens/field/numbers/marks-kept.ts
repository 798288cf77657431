import { useEffect, useState } from "preact/hooks";
import { useSpeaking } from "../../parts/speaking.ts";
import { useKeep } from "../keep/index.ts";
import { calledOut, type Marks, markAt } from "../reading/marks.ts";

/** The marks that this phone's tape was last read by: numbers are called out in the same. */
export function useMarks(): Marks {
  const { session } = useSpeaking();
  const { keep } = useKeep();
  const inch = session.units === "inch";
  const [marks, setMarks] = useState<Marks>(inch ? "1/16" : "mm");
  useEffect(() => {
    void keep.draft<Marks>("marks").then((kept) => kept !== undefined && (kept === "mm") !== inch && setMarks(kept));
  }, [keep, inch]);
  return marks;
}

/** A length in micrometres without its sign, to the nearest of those marks. */
export const called = (marks: Marks, micrometres: number): string => calledOut(marks, markAt(marks, Math.abs(micrometres)));
