import { factsOf } from "../job/index.ts";
import type { Context } from "./context.ts";
import type { LabelledText, RecordModel } from "./model.ts";
import type { WarrantyTerm } from "./settings.ts";
import { fill } from "./speaking.ts";
import { dayText, lastDayOfCover, momentIn } from "./when.ts";

/** When the water first ran: the first entry of an item that the tolerance sheet marks as that moment. */
function firstRunning({ state, sheet }: Context): number | undefined {
  const items = sheet.items.filter(({ marks }) => marks === "first running");
  const moments = items.flatMap(({ id }) => (state.byItem.get(id) ?? []).map(({ at }) => at));
  return moments.length === 0 ? undefined : Math.min(...moments);
}

/** The starts that the ledger holds; of an invoice or a sale it holds nothing. */
function startOf(context: Context, { starts }: WarrantyTerm): number | undefined {
  if (starts === "first running") return firstRunning(context);
  return starts === "handover" ? factsOf(context.state, "signed").at(-1)?.at : undefined;
}

export function warrantyView(context: Context, language: "en" | "es"): RecordModel["warranty"] {
  const { settings, texts } = context;
  const terms = settings.warranty.terms.map((term) => {
    const start = startOf(context, term);
    const end = start === undefined ? undefined : dayText(lastDayOfCover(momentIn(start, settings.zone), term.months), language);
    return {
      part: term.part,
      lasts: fill(texts("months"), { months: String(term.months) }),
      starts: texts(`starts-${term.starts}`),
      ends: end === undefined ? texts("ends-unknown") : fill(texts("ends-on"), { day: end }),
      conditions: term.conditions ?? "",
    };
  });
  const text = settings.warranty.text.length > 0 || terms.length > 0 ? settings.warranty.text : [texts("warranty-none")];
  return { terms, text, note: texts("warranty-note") };
}

/** Signed, declined with the objection word for word, or not reached. */
export function signatureView(context: Context): readonly LabelledText[] {
  const { state, sayer, texts } = context;
  const signed = factsOf(state, "signed").at(-1);
  if (signed) {
    return [
      { label: texts("signature-by"), text: context.nameOf(signed) },
      { label: texts("signature-relation"), text: signed.what.relation },
      { label: texts("signature-when"), text: sayer.moment(signed.at) },
    ];
  }
  const declined = factsOf(state, "declined").at(-1);
  if (declined) return [{ label: texts("signature-declined"), text: declined.what.objection }];
  const missed = factsOf(state, "not-reached").at(-1);
  return missed
    ? [{ label: texts("signature-not-reached"), text: missed.what.how }]
    : [{ label: texts("signature-by"), text: texts("signature-none") }];
}
