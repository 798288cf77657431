import { factsOf, type Live } from "../job/index.ts";
import type { Context } from "./context.ts";
import type { VisitView } from "./model.ts";
import { fill } from "./speaking.ts";

const namesOf = (fact: Live | undefined): readonly string[] => {
  const who = fact?.entry.who;
  const names = typeof who === "object" && who !== null && "names" in who && Array.isArray(who.names) ? who.names : [];
  return names.filter((name) => typeof name === "string");
};

function view({ sayer, texts, namePrinted, nameOf }: Context, begun: Live | undefined, ended: Live | undefined): VisitView {
  const role = sayer.role("crew");
  const typed = [...new Set([...namesOf(begun), ...namesOf(ended)])].map((name) => namePrinted(name, role));
  const either = begun ?? ended;
  const text = (fact: Live | undefined, key: string): string => (typeof fact?.what[key] === "string" ? fact.what[key] : "");
  const staysOpen = text(ended, "staysOpen");
  return {
    begun: begun ? sayer.moment(begun.at) : texts("visit-not-said"),
    ended: ended ? sayer.moment(ended.at) : texts("visit-not-said"),
    people: typed.length > 0 ? typed.join("; ") : either ? nameOf(either) : "",
    says: [text(begun, "note"), text(ended, "note"), staysOpen === "" ? "" : fill(texts("visit-open"), { what: staysOpen })]
      .filter((part) => part !== "")
      .join(" "),
  };
}

/** Every coming and going: an end belongs to the beginning before it, and each stands alone where the other was not entered. */
export function visitViews(context: Context): readonly VisitView[] {
  const moves = [...factsOf(context.state, "visit-begun"), ...factsOf(context.state, "visit-ended")].sort(
    (a, b) => a.position - b.position,
  );
  return moves.flatMap((fact, at) => {
    const [before, after] = [moves[at - 1], moves[at + 1]];
    if (fact.kind === "visit-begun") return [view(context, fact, after?.kind === "visit-ended" ? after : undefined)];
    return before?.kind === "visit-begun" ? [] : [view(context, undefined, fact)];
  });
}
