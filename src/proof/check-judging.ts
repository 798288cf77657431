import type { Clearance } from "../job/index.ts";
import type { Ledger } from "../ledger/index.ts";
import { type Outcome, type Refusal, refuse } from "../outcome/index.ts";
import type { JudgedRecord } from "./check-result.ts";
import { type JudgedAgain, judgedAgain } from "./judged-again.ts";
import type { Judging } from "./judging.ts";
import { idsOf } from "./named.ts";
import type { RecordSeal, SealedFindings } from "./sealed-record.ts";

/** Findings that do not come out as they were sealed, named by their ids: the words come with the view model. */
function differing({ other, otherClearances, added }: JudgedAgain): readonly Refusal[] {
  return [
    ...other.map((one) => refuse("seal-finding", `findings/${idsOf(one)}`, { title: idsOf(one) }).refusal),
    ...added.map((one) => refuse("seal-finding", `findings/${idsOf(one)}`, { title: idsOf(one) }).refusal),
    ...otherClearances.map(({ covering }: Clearance) => refuse("seal-finding", `clearances/${covering}`, { title: covering }).refusal),
  ];
}

/** Judges the attached ledger again and compares. A ledger that was changed may be one that no rules can judge. */
export async function checkJudging(
  { ledger, findings }: { readonly ledger?: Ledger; readonly findings?: SealedFindings },
  seal: RecordSeal,
  rules: (version: number) => Promise<Outcome<{ readonly digest: string; readonly judging: Judging }>>,
): Promise<{ readonly record: JudgedRecord; readonly faults: readonly Refusal[] }> {
  const not = (why: Refusal): { record: JudgedRecord; faults: readonly Refusal[] } => ({ record: { is: "not judged", why }, faults: [] });
  const unread = refuse("seal-not-judged", "findings").refusal;
  if (ledger === undefined || findings === undefined) return not(unread);
  const { version, digest } = seal.rules;
  const file = await rules(version);
  if (!file.ok) return not(file.refusal);
  if (file.value.digest !== digest) return not(refuse("rules-differ", "rules", { version }).refusal);
  try {
    const again = judgedAgain(findings, file.value.judging.judge(ledger, seal.issuedAt));
    return { record: { is: "judged", again, sealed: findings }, faults: differing(again) };
  } catch {
    return not(unread);
  }
}
