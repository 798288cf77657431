import type { Finding, Item } from "../../../job/index.ts";
import { shapeOfFinding } from "../../parts/shapes.ts";
import { Sign } from "../../parts/sign.tsx";
import type { ToldOnPhone } from "../told.ts";

/** The findings that an item's entries decide: its own, and those of the checks that read it. */
export function findingsOn({ now }: Pick<ToldOnPhone, "now">, item: Item, tag: string | undefined): readonly Finding[] {
  const reads = new Set(
    (now.state.sheet?.checks ?? []).filter(({ items, minus = [] }) => [...items, ...minus].includes(item.id)).map(({ id }) => id),
  );
  return now.findings.filter(
    (finding) =>
      (finding.tag === undefined || finding.tag === tag) && (finding.of === "check" ? reads.has(finding.check) : finding.check === item.id),
  );
}

/** Measured, and not simply within: somebody decides what comes next. */
export const isDoubtful = ({ verdict }: Finding): boolean => verdict === "outside" || verdict === "too close to call";

/** What merely waits for other readings has nothing to say of this one. */
const isSaying = ({ verdict }: Finding): boolean => verdict !== "not taken";

/** What the readings of an item come to now, in large type. */
export function VerdictNow({ found, sayer }: { readonly found: readonly Finding[]; readonly sayer: ToldOnPhone["sayer"] }) {
  return (
    <ul class="findings verdict-now" role="status">
      {found.filter(isSaying).map((finding) => (
        <li key={`${finding.check} ${finding.tag ?? ""}`}>
          <Sign shape={shapeOfFinding(finding)} />
          <span>{sayer.finding(finding)}</span>
        </li>
      ))}
    </ul>
  );
}
