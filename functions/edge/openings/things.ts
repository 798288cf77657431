import { type Outcome, ok, refuse } from "#core/outcome/index.ts";
import type { Opening } from "#core/wire/index.ts";
import type { CompanyRow, VersionRow } from "../adapters/companies.ts";
import type { Services } from "../services.ts";
import type { TakenOver } from "./facts.ts";

/** What the company has, read once for however many openings. */
export interface Things {
  readonly company: CompanyRow;
  readonly newest: readonly VersionRow[];
}

export async function thingsOf(services: Services, company: string): Promise<Things> {
  const [row, newest] = await Promise.all([services.companies.get(company), services.companies.newest(company)]);
  if (row === undefined) throw new Error(`company ${company} is not there`);
  return { company: row, newest };
}

/** The versions that an opening takes over. Refuses `entry-unknown-version` with what is not there as its place. */
export async function versionsFor(
  services: Services,
  { company, newest }: Things,
  opening: Opening,
): Promise<Outcome<TakenOver["versions"]>> {
  const of = (kind: "sheet" | "kit card" | "settings", name: string) => newest.find((thing) => thing.kind === kind && thing.name === name);
  const taken: TakenOver["versions"][number][] = [];
  const { sheet, sheetVersion, kitCards = [] } = opening;
  if (sheet !== undefined || sheetVersion !== undefined) {
    const found = sheetVersion === undefined ? of("sheet", sheet ?? "") : await services.companies.version(company.id, sheetVersion);
    if (found?.kind !== "sheet") return refuse("entry-unknown-version", "sheet", { digest: sheetVersion ?? "" });
    taken.push({ ...found, kind: "sheet" });
  }
  for (const [i, name] of kitCards.entries()) {
    const card = of("kit card", name);
    if (card === undefined) return refuse("entry-unknown-version", `kitCards/${i}`, { digest: "" });
    taken.push({ ...card, kind: "kit card" });
  }
  const settings = of("settings", "settings");
  if (settings) taken.push({ ...settings, kind: "settings" });
  return ok(taken);
}
