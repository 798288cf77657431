import { factKinds, factsOf, type Live } from "../job/index.ts";
import { afterWorkViews, callbackViews } from "./after-work-view.ts";
import type { Context } from "./context.ts";
import type { OtherView } from "./model.ts";
import { fill } from "./speaking.ts";

const known: ReadonlySet<string> = new Set(factKinds);
/** Written for the office alone. */
const officeOnly = "note-for-office";

/** An entry that the program does not read, and why. */
function unread({ texts }: Context, fact: Live): string | undefined {
  if (fact.kind === officeOnly) return undefined;
  if (!known.has(fact.kind)) return `${texts("unknown-kind")} (${fact.kind})`;
  if (fact.standing === "not understood") return fill(texts("kind-not-understood"), { kind: fact.kind });
  return fact.standing === "withheld" ? fill(texts("kind-withheld"), { kind: fact.kind }) : undefined;
}

/** What the office changed, in its own words; contacts stand in the title block alone. */
const changed = ({ what }: Live): string =>
  [what.title, what.order, what.invoice, what.reason].filter((part) => typeof part === "string" && part !== "").join("; ");

/** Whatever was entered and prints nowhere else, in the order of the work. */
export function otherViews(context: Context): readonly OtherView[] {
  const { state, sayer, texts } = context;
  const said: readonly { readonly fact: Live; readonly text: string }[] = [
    ...callbackViews(context),
    ...afterWorkViews(context),
    ...factsOf(state, "opened-late").map((f) => ({ fact: f, text: fill(texts("other-late"), { reason: f.what.reason }) })),
    ...factsOf(state, "particulars-set").map((f) => ({ fact: f, text: fill(texts("other-particulars"), { what: changed(f) }) })),
    ...factsOf(state, "site-taken-over").map((f) => ({ fact: f, text: fill(texts("other-site"), { number: String(f.what.number) }) })),
    ...factsOf(state, "looked-again").map((f) => ({
      fact: f,
      text: fill(texts("other-looked"), { title: sayer.title(f.what.about), note: f.what.note ?? "" }),
    })),
    ...factsOf(state, "rework-asked").map((f) => ({
      fact: f,
      text: fill(texts("other-rework-asked"), { title: sayer.title(f.what.about), reason: f.what.reason }),
    })),
    ...factsOf(state, "region-blurred").map((f) => ({
      fact: f,
      text: fill(texts("other-blurred"), { photo: f.what.photo.slice(0, 16), reason: f.what.reason }),
    })),
    ...factsOf(state, "moved-in").map((f) => ({
      fact: f,
      text: fill(texts("other-moved-in"), { count: String(f.what.entries.length), reason: f.what.reason }),
    })),
    ...factsOf(state, "record-issued").map((f) => ({
      fact: f,
      text: fill(texts("other-issued"), { version: String(f.what.version) }),
    })),
    ...factsOf(state, "record-released").map((f) => ({
      fact: f,
      text: fill(texts("other-released"), { version: String(f.what.version) }),
    })),
    ...factsOf(state, "rules-moved").map((f) => ({
      fact: f,
      text: fill(texts("other-rules"), { from: String(f.what.from), to: String(f.what.to) }),
    })),
    ...state.facts.flatMap((fact) => {
      const text = unread(context, fact);
      return text === undefined ? [] : [{ fact, text }];
    }),
  ];
  return [...said]
    .sort((a, b) => a.fact.position - b.fact.position)
    .map(({ fact, text }) => {
      const number = context.numberOf(fact.id);
      return { text, by: context.nameOf(fact), when: sayer.moment(fact.at), ...(number === undefined ? {} : { number }) };
    });
}
