import { callbacksOf, factsOf, type Live } from "../job/index.ts";
import type { Context } from "./context.ts";
import { makeCallbackSayer } from "./say-callbacks.ts";
import { makeWarrantySayer } from "./say-warranty.ts";
import { fill } from "./speaking.ts";
import { warrantyEn } from "./words/warranty-en.ts";
import { warrantyEs } from "./words/warranty-es.ts";

interface SaidFact {
  readonly fact: Live;
  readonly text: string;
}

/** Callbacks as they were opened and closed. What they cost is no matter of the record. */
export function callbackViews(context: Context): readonly SaidFact[] {
  const { state, texts, language } = context;
  const say = makeCallbackSayer(context.sayer, language);
  return [
    ...factsOf(state, "callback-opened").map((f) => ({
      fact: f,
      text: fill(texts("other-callback"), { what: say.symptom(f.what.symptom) }),
    })),
    ...callbacksOf(state).flatMap(({ closed }) => {
      const fact = state.facts.find(({ id }) => id === closed?.entry);
      return closed === undefined || fact === undefined
        ? []
        : [{ fact, text: fill(texts("other-callback-closed"), { what: say.closed(closed).join(". ") }) }];
    }),
  ];
}

/** What was entered after the work about parts, starts of cover, owners and services, one sentence each. */
export function afterWorkViews(context: Context): readonly SaidFact[] {
  const { state, texts, day, language } = context;
  const { text } = makeWarrantySayer(language);
  const words: Readonly<Record<string, string>> = language === "es" ? warrantyEs : warrantyEn;
  // a service of the company's calendar by its name, any other as it was typed
  const service = (typed: string): string => words[`service-${typed.trim().toLowerCase()}`] ?? typed;
  return [
    ...factsOf(state, "service-done").map((f) => ({
      fact: f,
      text: [fill(texts("other-service"), { what: service(f.what.service), day: day(f.what.date) }), f.what.note ?? ""]
        .filter((part) => part !== "")
        .join(". "),
    })),
    ...factsOf(state, "in-use").map((f) => ({ fact: f, text: text("other-in-use", { day: day(f.what.since), how: f.what.how }) })),
    ...factsOf(state, "cover-started").map((f) => ({
      fact: f,
      text: text(f.what.rule === "invoice paid" ? "other-invoice-paid" : "other-sold", {
        day: day(f.what.day),
        part: f.what.part ?? "",
        paper: f.what.paper ?? "",
      }),
    })),
    ...factsOf(state, "part-kept").map((f) => ({ fact: f, text: text("other-kept", { part: f.what.part, why: f.what.why }) })),
    ...factsOf(state, "part-replaced").map((f) => ({
      fact: f,
      text: text("other-replaced", { part: f.what.part, day: day(f.what.day), serial: f.what.serial ?? "" }),
    })),
    ...factsOf(state, "part-registered").map((f) => ({
      fact: f,
      text: text("other-registered", { part: f.what.part, day: day(f.what.day), number: f.what.number ?? "" }),
    })),
    ...factsOf(state, "new-owner").map((f) => ({ fact: f, text: text("other-new-owner", { day: day(f.what.day) }) })),
  ];
}
