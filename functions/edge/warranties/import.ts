import type { Json } from "#core/ledger/index.ts";
import { type Outcome, ok, refuse } from "#core/outcome/index.ts";
import type { OldWarranty, WarrantyImported } from "#core/wire/index.ts";
import type { Session } from "../adapters/sessions.ts";
import { changes } from "../company/change.ts";
import { sayIn } from "../say.ts";
import type { Services } from "../services.ts";
import { readWarrantyTable, type TableRow } from "./read-table.ts";

type Told = WarrantyImported["rows"][number];
const keyOf = ({ number, part }: Pick<OldWarranty, "number" | "part">): string => JSON.stringify([number, part]);

/** Of the papers that a table names, those that have been stored. */
async function papersKnown(services: Services, company: string, rows: readonly TableRow[]): Promise<ReadonlySet<string>> {
  const named = new Set(rows.flatMap(({ read }) => (read.ok && read.value.paper !== undefined ? [read.value.paper] : [])));
  const found = await Promise.all([...named].map((paper) => services.photos.get(company, paper)));
  return new Set(found.flatMap((row) => (row ? [row.sha256] : [])));
}

/** The scanned paper stays when a table without that column comes again. */
const merged = (row: OldWarranty, before: OldWarranty | undefined): OldWarranty =>
  row.paper === undefined && before?.paper !== undefined ? { ...row, paper: before.paper } : row;

const sameAs = (one: OldWarranty, other: OldWarranty | undefined): boolean =>
  other !== undefined && (["customer", "address", "start", "end", "note", "paper"] as const).every((name) => one[name] === other[name]);

/** Sets old warranties, each with its entry in the company's ledger: all of them or none. Names stand in `who`. */
export const setOldWarranties = (services: Services, session: Session, rows: readonly OldWarranty[]): Promise<Outcome<number>> =>
  changes(
    services,
    session,
    rows.map(({ customer, address, ...what }) => ({ kind: "old-warranty-set", what: what as unknown as Json, who: { customer, address } })),
    () => rows.map((row) => services.oldWarranties.put(session.company, row)),
  );

/**
 * Reads a table of old warranties and, unless it is a dry run, takes it over: every new or changed row as an entry of the
 * company's ledger, all of them or none. Where one row does not read nothing is taken. A table that came before changes nothing.
 */
export async function importWarranties(
  services: Services,
  session: Session,
  { csv, dry }: { readonly csv: string; readonly dry: boolean },
): Promise<Outcome<WarrantyImported>> {
  const table = readWarrantyTable(csv, session.units === "metric" ? "day first" : "month first");
  if (!table.ok) return table;
  const before = new Map((await services.oldWarranties.all(session.company)).map((one) => [keyOf(one), one]));
  const say = sayIn(session.language, session.units);
  const papers = await papersKnown(services, session.company, table.value);
  const told = table.value.map(({ line, read: asRead }: TableRow): Told & { readonly row?: OldWarranty } => {
    const read =
      asRead.ok && asRead.value.paper !== undefined && !papers.has(asRead.value.paper) ? refuse("photo-unknown", "paper", {}) : asRead;
    if (!read.ok) return { line, outcome: "does not read", column: read.refusal.place, says: say(read.refusal) };
    const known = before.get(keyOf(read.value));
    const row = merged(read.value, known);
    const outcome = known === undefined ? "new" : sameAs(row, known) ? "same" : "changed";
    return { line, outcome, number: row.number, part: row.part, row };
  });
  const rows = told.map(({ row: _, ...one }) => one);
  const taken = told.flatMap(({ outcome, row }) => (row !== undefined && (outcome === "new" || outcome === "changed") ? [row] : []));
  if (dry || taken.length === 0 || rows.some(({ outcome }) => outcome === "does not read")) return ok({ rows, taken: 0 });
  const written = await setOldWarranties(services, session, taken);
  return written.ok ? ok({ rows, taken: taken.length }) : written;
}
