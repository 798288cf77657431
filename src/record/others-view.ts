import { factKinds, factsOf, type Live } from "../job/index.ts";
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

/** Whatever was entered and prints nowhere else, in the order of the work. */
export function otherViews(context: Context): readonly OtherView[] {
  const { state, sayer, texts, day } = context;
  const said: readonly { readonly fact: Live; readonly text: string }[] = [
    ...factsOf(state, "callback-opened").map((f) => ({ fact: f, text: fill(texts("other-callback"), { what: f.what.symptom }) })),
    ...factsOf(state, "callback-closed").map((f) => ({ fact: f, text: fill(texts("other-callback-closed"), { what: f.what.cause }) })),
    ...factsOf(state, "service-done").map((f) => ({
      fact: f,
      text: fill(texts("other-service"), { what: f.what.service, day: day(f.what.date) }),
    })),
    ...factsOf(state, "opened-late").map((f) => ({ fact: f, text: fill(texts("other-late"), { reason: f.what.reason }) })),
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
