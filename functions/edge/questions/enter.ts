import { type Outcome, ok, refuse } from "#core/outcome/index.ts";
import { instrumentOff, lengthOf } from "#core/quality/index.ts";
import { type CompanyFact, companyFactShapes, type InstrumentChecked, read, type TapeStudied, type Taught } from "#core/wire/index.ts";
import type { PersonRow } from "../adapters/companies.ts";

const isOf =
  (people: readonly PersonRow[]) =>
  (id: string): boolean =>
    people.some((person) => person.id === id);

/** Every person read every mark in every round, once: a study with holes in it could not be worked out. */
function studyFault({ people, marks, rounds, readings }: TapeStudied): Outcome<void> {
  const read = new Set(readings.map(({ person, mark, round }) => `${person} ${mark} ${round}`));
  const wanted = people.flatMap((person) =>
    Array.from({ length: marks * rounds }, (_, i) => `${person} ${(i % marks) + 1} ${Math.floor(i / marks) + 1}`),
  );
  const missing = wanted.findIndex((one) => !read.has(one));
  if (missing >= 0 || readings.length !== wanted.length)
    return refuse("request-shape", "what/readings", { found: readings.length, wanted: wanted.length });
  const bad = readings.findIndex((reading) => lengthOf(reading) === undefined);
  return bad < 0 ? ok(undefined) : refuse("reading-not-understood", `what/readings/${bad}/typed`, { found: readings[bad]?.typed ?? "" });
}

function checkFault(checked: InstrumentChecked): Outcome<void> {
  return instrumentOff({ ...checked, ...(checked.over === undefined ? {} : { over: checked.over }) } as Parameters<
    typeof instrumentOff
  >[0]) === undefined
    ? refuse("reading-not-understood", "what/first/typed", { found: checked.first.typed })
    : ok(undefined);
}

/** Judges a fact of the company itself: its shape, its people, and that its readings are lengths. */
export function companyFactFault({ kind, what }: CompanyFact, people: readonly PersonRow[]): Outcome<void> {
  const shaped = read(companyFactShapes[kind], what, "request-shape", "what");
  if (!shaped.ok) return shaped;
  const known = isOf(people);
  const named = kind === "instrument-checked" ? [(what as unknown as InstrumentChecked).by] : ((what as unknown as Taught).people ?? []);
  if (!named.every(known)) return refuse("person-unknown", "what/people", {});
  if (kind === "tape-studied") return studyFault(what as unknown as TapeStudied);
  return kind === "instrument-checked" ? checkFault(what as unknown as InstrumentChecked) : ok(undefined);
}
