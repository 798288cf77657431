import { designAt, factsOf, type JobState, jobWho, type LineSaid } from "#core/job/index.ts";
import type { Json } from "#core/ledger/index.ts";
import { type Outcome, ok } from "#core/outcome/index.ts";
import type { Particulars } from "#core/wire/index.ts";
import { type OpeningFact, said } from "../openings/facts.ts";
import { particularsSaid } from "../openings/particulars.ts";
import { contactsOf, crewOf, type TableNames } from "./opening-of.ts";

type Fields = { readonly [key: string]: Json };
const same = (a: unknown, b: unknown): boolean => JSON.stringify(a) === JSON.stringify(b);

/** A contact with what was known of it and is not said again. */
const mergedContact = (known: Json | undefined, typed: Fields): Fields => ({ ...((known ?? {}) as Fields), ...typed });

function particularsChanged(state: JobState, { fields }: LineSaid, names: TableNames): Outcome<Particulars> {
  const crew = crewOf(fields, names);
  if (!crew.ok) return crew;
  const { title, order, invoice, address } = fields;
  const who = jobWho(state);
  const contacts = Object.fromEntries(
    Object.entries(contactsOf(fields)).map(([of, typed]) => [of, mergedContact(who[of], typed as unknown as Fields)]),
  );
  const wanted = said({ title, order, invoice, crew: crew.value as Json | undefined, address, ...contacts });
  const { opened } = state;
  const now = { title: opened?.title, order: opened?.order, invoice: opened?.invoice, crew: opened?.crew, ...who };
  return ok(
    Object.fromEntries(Object.entries(wanted).filter(([name, value]) => !same(value, now[name as keyof typeof now]))) as Particulars,
  );
}

function figuresChanged(state: JobState, { figures }: LineSaid): Fields {
  const now = designAt(state, Number.POSITIVE_INFINITY).figures;
  return Object.fromEntries(Object.entries(figures).filter(([key, value]) => !same(value, now[key]))) as unknown as Fields;
}

/** What a line changes of a job that is there: only what it says and the job does not say already. */
export function changeOf(state: JobState, line: LineSaid, names: TableNames): Outcome<readonly OpeningFact[]> {
  const particulars = particularsChanged(state, line, names);
  if (!particulars.ok) return particulars;
  const figures = figuresChanged(state, line);
  const taken = factsOf(state, "reading-taken");
  const readings = line.readings.filter(({ item, typed }) => taken.filter(({ what }) => what.item === item).at(-1)?.what.typed !== typed);
  return ok([
    ...(Object.keys(particulars.value).length > 0 ? [{ place: "", ...particularsSaid(particulars.value) }] : []),
    ...(Object.keys(figures).length > 0
      ? [{ kind: "design-set" as const, place: "", contents: { what: { figures, reason: "CSV" } } }]
      : []),
    ...readings.map((reading) => ({ kind: "reading-taken" as const, place: reading.item, contents: { what: { ...reading } } })),
  ]);
}
