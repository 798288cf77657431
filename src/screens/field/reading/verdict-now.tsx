import type { Finding, Item } from "../../../job/index.ts";
import { isForElectrician } from "../../parts/counts.ts";
import { FindingList } from "../../parts/steps.tsx";
import type { ToldOnPhone } from "../told.ts";

/** The findings that an item's entries decide: its own, and those of the checks that read it. Judged without the rest. */
export const findingsOn = ({ book }: Pick<ToldOnPhone, "book">, item: Item, tag: string | undefined): readonly Finding[] =>
  book.on(item.id, tag);

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
