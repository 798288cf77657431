import type { CompanyObserved } from "#core/quality/index.ts";
import type { CompanyFact } from "#core/wire/index.ts";
import { idFrom } from "./entries.ts";

const millimetres = (micrometres: number): { readonly typed: string; readonly unit: string } => ({
  typed: (micrometres / 1000).toFixed(1),
  unit: "mm",
});
/** What the second reading of a check shows, micrometres: of no matter, as only the difference counts. */
const LIES_AT = 1_000_000;
const noon = (day: string): number => Date.parse(`${day}T12:00:00Z`);

/** What the drawn company keeps about itself, as it is entered: tape studies, checks of instruments, who was taught. */
export function factsOf({ studies, instrumentChecks, taught }: CompanyObserved, company: string): readonly CompanyFact[] {
  const who = (name: string): string => idFrom(`${company} ${name}`);
  const id = (entry: string): string => idFrom(`${company} fact ${entry}`);
  return [
    ...studies.map(({ entry, day, instrument, placing, readings }) => {
      const began = noon(day);
      const people = [...new Set(readings.map(({ person }) => who(person)))];
      const read = readings.map(({ person, mark, trial, value }, i) => ({
        person: who(person),
        mark: Number(mark),
        round: trial,
        ...millimetres(value),
        at: began + i * 40_000,
      }));
      const times = { began, ended: began + readings.length * 40_000 };
      return {
        id: id(entry),
        kind: "tape-studied" as const,
        what: { instrument, placing, people, marks: 5, rounds: 2, seed: 1, ...times, readings: read },
      };
    }),
    ...instrumentChecks.map(({ entry, instrument, way, person, off, distance, at }) => ({
      id: id(entry),
      kind: "instrument-checked" as const,
      // turning doubles an error: the two readings lie twice as far apart as the line is off
      what: {
        instrument,
        way,
        by: who(person),
        first: millimetres(LIES_AT + 2 * off),
        second: millimetres(LIES_AT),
        over: millimetres(distance),
        at,
      },
    })),
    ...taught.map(({ entry, day, step }) => ({ id: id(entry), kind: "taught" as const, what: { step, day } })),
  ];
}
