import { factsOf } from "../job/index.ts";
import type { Context } from "./context.ts";
import type { EnclosureView } from "./model.ts";

/** Papers that came as PDF: filed by the company, or sent by whoever did a part of the work. Each file once. */
export function enclosureViews(context: Context): readonly EnclosureView[] {
  const { state, texts, nameOf, sayer } = context;
  const filed = factsOf(state, "paper-added").flatMap((fact) => {
    const { title, paper, pdf } = fact.what;
    return pdf === undefined ? [] : [{ fact, paper: pdf, title, says: paper }];
  });
  const sent = factsOf(state, "done-by-others").flatMap((fact) => {
    const { what, paper } = fact.what;
    return paper === undefined ? [] : [{ fact, paper, title: what, says: texts("by-others") }];
  });
  const seen = new Set<string>();
  return [...filed, ...sent]
    .sort((a, b) => a.fact.position - b.fact.position)
    .filter(({ paper }) => !seen.has(paper) && seen.add(paper))
    .map(({ fact, paper, title, says }) => ({ paper, title, says: `${says}; ${nameOf(fact)}, ${sayer.moment(fact.at)}` }));
}
