import type { Refusal } from "../outcome/index.ts";
import { type Language, momentText } from "../record/index.ts";
import { type RecordCheck, uncovered } from "./check-result.ts";
import { entryName, findingName } from "./named.ts";
import { withheldLines } from "./said-withheld.ts";
import { sealedFiles } from "./sealed-record.ts";
import { checkingSentence, type ProofSay, proofWords } from "./speaking.ts";
import type { ProofWord } from "./words/proof-en.ts";

/** What came of a check, as sentences in the order in which they are read. */
export interface CheckSaid {
  /** Whose record of what it is, as far as the seal vouches for that; empty where it vouches for nothing. */
  readonly title: readonly string[];
  readonly tone: "unchanged" | "changed";
  readonly standing: string;
  /** By whom, where that can be told. */
  readonly by?: string;
  readonly sections: readonly { readonly title: string; readonly lines: readonly string[] }[];
}

function titleOf({ seal, model }: RecordCheck, say: ProofSay, language: Language): readonly string[] {
  if (seal === undefined) return [];
  const { version, edition, issuedAt } = seal;
  // the record's own words where they are in the reader's language: they are in the site's zone
  const issued = model?.language === language ? model.title.issued : momentText(issuedAt, "UTC", language);
  const about = say("record-of", { version, edition: say(`edition-${edition}`), issued });
  if (model === undefined) return [about];
  const { record, job, ownNumber } = model.title;
  return [model.company.name, [record, job, ownNumber].filter((part) => part !== undefined).join(" · "), about];
}

function standingOf({ standing, key }: RecordCheck, say: ProofSay): string {
  if (standing === "not sealed") return say("not-sealed");
  if (key === undefined) return say("changed-unread");
  return say(standing === "at odds" ? "at-odds" : standing, { key });
}

function judgedLines({ judged, model, seal }: RecordCheck, say: ProofSay, refusal: (r: Refusal) => string): readonly string[] {
  if (judged === undefined || seal === undefined) return [];
  if (judged.is === "not judged") return [`${say("not-judged")}. ${refusal(judged.why)}`];
  const { again, sealed } = judged;
  const clearances = sealed.clearances.length - again.otherClearances.length - again.withheldClearances.length;
  const same = say("judged-same", { count: again.same, clearances, rules: seal.rules.version });
  const unit = again.oneUnit.length === 0 ? [] : [say("judged-unit", { count: again.oneUnit.length })];
  const titles = [...again.withheld.map((one) => findingName(model, one)), ...again.withheldClearances.map(({ covering }) => covering)];
  return [same, ...unit, ...(titles.length === 0 ? [] : [say("judged-withheld", { titles: titles.join("; ") })])];
}

function coveredLines({ seal, judged, key }: RecordCheck, pages: number, say: ProofSay): readonly string[] {
  if (seal === undefined || key === undefined) return [];
  const pictures = Object.values(seal.photos).filter((print) => print !== null).length;
  const papers = Object.keys(seal.papers ?? {}).length;
  return [
    say("covered-seal"),
    say("covered-files", { files: sealedFiles.join(", ") }),
    ...(judged === undefined ? [] : [say("covered-chain", { entries: seal.head.number })]),
    say("covered-pages", { pages }),
    say("covered-pictures", { pictures }),
    ...(papers === 0 ? [] : [say("covered-papers", { papers })]),
  ];
}

/** One thing that was changed, with the name of the entry or finding that it is about. */
function faultLine(check: RecordCheck, fault: Refusal, say: ProofSay, refusal: (r: Refusal) => string): string {
  const name = entryName(check, fault);
  if (name !== undefined) {
    const { number, title, typed } = name;
    const about = title === undefined ? say("entry", { number }) : say("entry-named", { number, title });
    const prints = typed === undefined || fault.code !== "ledger-part-digest" ? "" : ` ${say("entry-prints", { typed })}`;
    return `${about}: ${refusal(fault)}${prints}`;
  }
  if (fault.code !== "seal-finding" || check.model === undefined) return refusal(fault);
  const title = findingName(check.model, String(fault.figures.title ?? ""));
  return refusal({ ...fault, figures: { ...fault.figures, title } });
}

const faultTitle = { unchanged: "what-changed", changed: "what-changed", "at odds": "what-at-odds", "not sealed": "what-missing" } as const;

/** Says what came of a check. `pages`: how many the file has. */
export function checkSaid(check: RecordCheck, pages: number, language: Language): CheckSaid {
  const say = proofWords(language);
  const refusal = checkingSentence(language);
  const by = check.company ? say("by-company", { name: check.company.name }) : say("by-nobody");
  const section = (title: ProofWord, lines: readonly string[]) => (lines.length === 0 ? [] : [{ title: say(title), lines }]);
  return {
    title: titleOf(check, say, language),
    tone: check.standing === "unchanged" ? "unchanged" : "changed",
    standing: standingOf(check, say),
    ...(check.key === undefined ? {} : { by }),
    sections: [
      ...section(faultTitle[check.standing], [...new Set(check.faults.map((fault) => faultLine(check, fault, say, refusal)))]),
      ...section("judged-title", judgedLines(check, say, refusal)),
      ...(check.seal === undefined ? [] : section("withheld-title", withheldLines(check.withheld, say))),
      ...section("covered-title", coveredLines(check, pages, say)),
      ...section(
        "uncovered-title",
        uncovered.map((word) => say(word)),
      ),
    ],
  };
}
