import type { ToleranceSheet, Words } from "#core/job/index.ts";
import type { NamesKnown } from "#core/quality/index.ts";
import type { CompanyKnown } from "../adapters/company-known.ts";

/** Names for whatever the answers speak of beside jobs: the company's people, its newest tolerance sheets and instruments. */
export function namesFor({ people, things }: Omit<CompanyKnown, "facts">): Omit<NamesKnown, "jobs"> {
  return {
    people: Object.fromEntries(people.map(({ id, name }) => [id, name])),
    sheets: Object.fromEntries(
      things.flatMap(({ kind, name, content }) => (kind === "sheet" ? [[name, content as unknown as ToleranceSheet]] : [])),
    ),
    instruments: Object.fromEntries(
      things.flatMap(({ kind, name, content }) => (kind === "instrument" ? [[name, titleOf((content as { title?: unknown }).title)]] : [])),
    ),
  };
}

const titleOf = (title: unknown): Words => (typeof title === "string" ? { en: title } : (title as Words));
