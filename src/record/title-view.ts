import { type JobState, jobWho, siteMarks } from "../job/index.ts";
import { isWithheld, type Json, type Ledger } from "../ledger/index.ts";
import type { Context } from "./context.ts";
import type { LabelledText } from "./model.ts";
import { fill } from "./speaking.ts";
import type { RecordText } from "./words/record-en.ts";

type Fields = { readonly [key: string]: Json };
const fields = (value: Json | undefined): Fields =>
  typeof value === "object" && value !== null && !Array.isArray(value) ? (value as Fields) : {};
const textIn = (value: Json | undefined): string | undefined => (typeof value === "string" && value !== "" ? value : undefined);

/** A contact as typed: name, and how to reach it only in the company's edition. */
function contact({ edition }: Context, value: Json | undefined): string | undefined {
  const typed = textIn(value);
  if (typed !== undefined) return typed;
  const given = fields(value);
  const reach = edition === "company" ? [textIn(given.phone), textIn(given.contact)] : [];
  const parts = [textIn(given.name), ...reach].filter((p) => p !== undefined);
  return parts.length > 0 ? parts.join(", ") : undefined;
}

/** Whoever is met on site is named in the customer's edition as everybody else is. */
function onSite(context: Context, value: Json | undefined): string | undefined {
  const name = textIn(value) ?? textIn(fields(value).name);
  return name === undefined || context.edition === "company"
    ? contact(context, value)
    : context.namePrinted(name, context.texts("contact"));
}

export function titleLines(state: JobState, context: Context): readonly LabelledText[] {
  const { texts, edition, settings } = context;
  const opened = state.facts.find((f) => f.kind === "job-opened");
  const who = jobWho(state);
  const marks = siteMarks(state);
  const where = fields(opened?.entry.where);
  const rows: readonly (readonly [RecordText, string | undefined])[] = [
    ["label-site", textIn(who.address) ?? textIn(where.address)],
    ["label-customer", contact(context, who.customer)],
    ["label-contact", onSite(context, who.onSite)],
    ["label-receiver", contact(context, who.receiver)],
    ["label-order", textIn(state.opened?.order)],
    ["label-invoice", textIn(state.opened?.invoice)],
    ["label-height-mark", marks.heightMark],
    ["label-tie-marks", textIn(marks.tieMarks.join("; "))],
    ["label-zone", fill(texts("times-in"), { zone: settings.zone })],
    ["label-edition", texts(`edition-${edition}`)],
  ];
  return rows.flatMap(([label, text]) => (text === undefined ? [] : [{ label: texts(label), text }]));
}

/** What the attached edition of the ledger leaves out; the pages may still say some of it. */
export function withheldText({ texts }: Context, attached: Ledger): string {
  const bodies = attached.entries.map(({ body }) => body);
  const some = bodies.filter((body) => [body.who, body.where].some((part) => part !== undefined && isWithheld(part))).length;
  const whole = bodies.filter((body) => body.what !== undefined && isWithheld(body.what)).length;
  const said = [
    ...(some === 0 ? [] : [fill(texts("withheld-some"), { entries: String(some) })]),
    ...(whole === 0 ? [] : [fill(texts("withheld-whole"), { whole: String(whole) })]),
  ];
  return said.length === 0 ? texts("withheld-none") : said.join(" ");
}
