import { useMemo } from "preact/hooks";
import { sheetDifferences, type ToleranceSheet } from "../../../job/index.ts";
import { makeSheetSayer } from "../../../record/index.ts";
import { useSpeaking } from "../../parts/speaking.ts";

/** What changed from one version of a sheet to another, line by line. */
export function useDifferences(before: ToleranceSheet, after: ToleranceSheet): readonly string[] {
  const { session } = useSpeaking();
  return useMemo(() => {
    const sayer = makeSheetSayer(session, [after, before]);
    return sheetDifferences(before, after).map(sayer.difference);
  }, [before, after, session]);
}

export const Lines = ({ lines }: { readonly lines: readonly string[] }) => (
  <ul class="differences">
    {lines.map((line) => (
      <li key={line}>{line}</li>
    ))}
  </ul>
);

export function Differences({ before, after }: { readonly before: ToleranceSheet; readonly after: ToleranceSheet }) {
  const { session } = useSpeaking();
  const lines = useDifferences(before, after);
  return lines.length === 0 ? <p>{makeSheetSayer(session).text("nothing")}</p> : <Lines lines={lines} />;
}
