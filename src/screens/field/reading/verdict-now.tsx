import type { Finding, Item, ToleranceSheet } from "../../../job/index.ts";
import { isForElectrician } from "../../parts/counts.ts";
import { FindingList } from "../../parts/steps.tsx";
import type { ToldOnPhone } from "../told.ts";

/** Of every item the checks that read it. */
const readers = new WeakMap<ToleranceSheet, ReadonlyMap<string, ReadonlySet<string>>>();

function readersIn(sheet: ToleranceSheet): ReadonlyMap<string, ReadonlySet<string>> {
  const before = readers.get(sheet);
  if (before !== undefined) return before;
  const made = new Map<string, Set<string>>();
  for (const { id, items, minus = [] } of sheet.checks)
    for (const item of [...items, ...minus]) made.set(item, (made.get(item) ?? new Set()).add(id));
  readers.set(sheet, made);
  return made;
}

/** The findings that an item's entries decide: its own, and those of the checks that read it. */
export function findingsOn({ now }: Pick<ToldOnPhone, "now">, item: Item, tag: string | undefined): readonly Finding[] {
  const reads = now.state.sheet && readersIn(now.state.sheet).get(item.id);
  return now.findings.filter(
    (finding) =>
      (finding.tag === undefined || finding.tag === tag) &&
      (finding.of === "check" ? reads?.has(finding.check) === true : finding.check === item.id),
  );
}

/** Measured, and not simply within: somebody decides what comes next. Of what the electrician is asked there is no verdict to doubt. */
export const isDoubtful = (finding: Finding): boolean =>
  !isForElectrician(finding) && (finding.verdict === "outside" || finding.verdict === "too close to call");

/** What merely waits for other readings has nothing to say of this one. */
export const isSaying = ({ verdict }: Finding): boolean => verdict !== "not taken";

/** What the readings of an item come to now, in large type. */
export function VerdictNow({ found, sayer }: { readonly found: readonly Finding[]; readonly sayer: ToldOnPhone["sayer"] }) {
  return (
    <div class="verdict-now" role="status">
      <FindingList findings={found.filter(isSaying)} sayer={sayer} />
    </div>
  );
}
