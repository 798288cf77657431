import { asTyped, type Finding, type Item, type Live } from "../job/index.ts";
import type { Context } from "./context.ts";
import { becameOf, firstTyped } from "./corrections-view.ts";
import type { ReadingView } from "./model.ts";
import { fill } from "./speaking.ts";

/** The entries that some finding counts. */
export function countedIn(findings: readonly Finding[]): ReadonlySet<string> {
  return new Set(
    findings.flatMap(({ entries, aside = [] }) => {
      const apart = new Set(aside);
      return entries.filter((entry) => !apart.has(entry));
    }),
  );
}

/** Why a reading no longer counts; undefined where it does. */
function asideOf(context: Context, fact: Live, counted: ReadonlySet<string>): string | undefined {
  if (fact.standing === "withdrawn" || fact.standing === "moved out") return becameOf(context, fact)?.text;
  if (fact.standing !== "counts") return context.texts("not-understood");
  if (context.beforeRework.has(fact.id)) return context.texts("before-rework");
  return counted.has(fact.id) ? undefined : context.texts("not-counted");
}

/** 'Set-up 2, 12 May 2026, 11:04 CDT: laser and rod, receiver on fine, 40 ft' */
function setUpText({ state, sheet, sayer, texts }: Context, id: string): string | undefined {
  const setUp = state.setUps.get(id);
  if (setUp === undefined) return undefined;
  const number = [...state.setUps.keys()].indexOf(id) + 1;
  const at = state.facts.find((f) => f.id === id)?.at;
  const how = [
    sayer.words(sheet.instruments.find((i) => i.id === setUp.instrument)?.title),
    setUp.receiver === undefined ? "" : texts(setUp.receiver === "fine" ? "receiver-fine" : "receiver-coarse"),
    setUp.distance === undefined ? "" : asTyped(setUp.distance.typed, setUp.distance.unit),
  ];
  return fill(texts("set-up"), {
    number: String(number),
    when: at === undefined ? "" : sayer.moment(at),
    how: how.filter((part) => part !== "").join(", "),
  });
}

/** What it was read with and on; what its set-up says of all its readings is said there once. */
function howRead({ sayer, sheet, texts }: Context, { what }: Live, item: Item, inSetUp: boolean): string {
  const instrument = sheet.instruments.find((i) => i.id === (what.instrument ?? (inSetUp ? undefined : item.instrument)));
  const placing = sheet.placings.find((p) => p.id === (what.placing ?? item.placing));
  return [
    typeof what.mark === "string" ? fill(texts("from-mark"), { mark: what.mark }) : "",
    sayer.words(instrument?.title),
    typeof what.receiver === "string" ? texts(what.receiver === "fine" ? "receiver-fine" : "receiver-coarse") : "",
    sayer.words(placing?.title),
  ]
    .filter((part) => part !== "")
    .join(", ");
}

/** One reading as it was typed; corrected: the original, and then what it was corrected to, by whom and why. */
export function readingView(
  context: Context,
  fact: Live,
  item: Item,
  counted: ReadonlySet<string>,
  besides: ReadonlyMap<string, string>,
): ReadingView {
  const { sayer, numberOf } = context;
  const aside = asideOf(context, fact, counted);
  const corrected = fact.standing === "counts" ? becameOf(context, fact)?.text : undefined;
  const setUp = typeof fact.what.setUp === "string" ? setUpText(context, fact.what.setUp) : undefined;
  const number = numberOf(fact.id);
  const inPhoto = besides.get(fact.id);
  return {
    title: sayer.title({ item: item.id, ...(typeof fact.what.tag === "string" ? { tag: fact.what.tag } : {}) }),
    typed: firstTyped(context, fact, item.quantity === "instant"),
    how: howRead(context, fact, item, setUp !== undefined),
    when: sayer.moment(typeof fact.what.at === "number" ? fact.what.at : fact.at),
    ...(number === undefined ? {} : { number }),
    ...(setUp === undefined ? {} : { setUp }),
    ...(corrected === undefined ? {} : { corrected }),
    ...(aside === undefined ? {} : { aside }),
    ...(inPhoto === undefined ? {} : { inPhoto }),
  };
}
