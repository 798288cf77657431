import type { ToleranceSheet } from "../../job/index.ts";
import { type CompanyEntry, type NamesKnown, standingEntries } from "../../quality/index.ts";
import type { CompanyFacts, CompanyView, People } from "../../wire/index.ts";
import { type Answer, ask } from "../parts/edge.ts";
import { versionContent } from "./opening-sheet.ts";

/** What the company keeps about itself, with the names of whatever it speaks of. */
export interface OwnFacts {
  /** Those that nobody has taken back, in the order in which they were entered. */
  readonly facts: readonly CompanyEntry[];
  readonly people: People["people"];
  /** The newest version of each tolerance sheet. */
  readonly sheets: readonly ToleranceSheet[];
  readonly names: NamesKnown;
}

/** A version never changes: read once. */
const contents = new Map<string, ToleranceSheet>();

async function sheetOf(digest: string): Promise<readonly ToleranceSheet[]> {
  const known = contents.get(digest) ?? (await versionContent<ToleranceSheet>(digest));
  if (known === undefined) return [];
  contents.set(digest, known);
  return [known];
}

export async function readOwnFacts(): Promise<Answer<OwnFacts>> {
  const [facts, company, people] = await Promise.all([
    ask<CompanyFacts>("/api/company/facts"),
    ask<CompanyView>("/api/company"),
    ask<People>("/api/people"),
  ]);
  if (facts.is !== "given") return facts;
  if (company.is !== "given") return company;
  if (people.is !== "given") return people;
  const sheets = (await Promise.all(company.value.sheets.map(({ digest }) => sheetOf(digest)))).flat();
  const names = {
    people: Object.fromEntries(people.value.people.map(({ person, name }) => [person, name])),
    jobs: {},
    sheets: Object.fromEntries(sheets.map((sheet) => [sheet.id, sheet])),
    instruments: {},
  };
  return { is: "given", value: { facts: standingEntries(facts.value.facts), people: people.value.people, sheets, names } };
}
