import { columnsOf, placeOfColumn, readLine, type ToleranceSheet } from "#core/job/index.ts";
import { type Outcome, ok, type Refusal, refuse } from "#core/outcome/index.ts";
import type { DayOrder } from "#core/reading/index.ts";
import type { TableRead } from "#core/wire/index.ts";
import { plainNumber } from "../adapters/own-numbers.ts";
import type { Session } from "../adapters/sessions.ts";
import { follow } from "../jobs/findings.ts";
import { openJobs } from "../openings/open.ts";
import { thingsOf } from "../openings/things.ts";
import type { Services } from "../services.ts";
import { parsedTable, type TableText } from "./parsed.ts";
import { type Line, outcomeOf, viewOf } from "./view.ts";
import { looked, type Reading, workOf } from "./work-of.ts";

export interface TableAsked {
  readonly bytes: Uint8Array;
  readonly order: DayOrder;
  /** The tolerance sheet that lines take over which name none; its readings and figures may be columns. */
  readonly sheet: string | undefined;
  /** Only look. */
  readonly dry: boolean;
}

/** As many jobs as are computed at once after a table; the others when somebody first reads them. */
const FOLLOWED = 50;

/** Of two lines with one number the later is told which is the other. */
function withoutTwice(lines: readonly Line[]): readonly Line[] {
  const seen = new Map<string, number>();
  return lines.map((one) => {
    const number = plainNumber(one.said.fields.number ?? "");
    const before = seen.get(number);
    if (number !== "" && before === undefined) seen.set(number, one.line);
    return before === undefined || number === ""
      ? one
      : { ...one, refusals: [...one.refusals, refuse("table-number-twice", "number", { line: before }).refusal] };
  });
}

/** Heads that say the same, or none for the number. */
function headFault(places: readonly string[]): Refusal | undefined {
  const twice = places.find((place, i) => places.indexOf(place) !== i);
  if (twice !== undefined) return refuse("table-column-twice", "file", { column: twice }).refusal;
  return places.includes("number") ? undefined : refuse("table-column-missing", "file", { column: "number" }).refusal;
}

/** Reads a table of jobs, tells what comes of each line, and unless it only looks writes all of it, or refuses it whole. */
export async function takeTable(
  services: Services,
  session: Session,
  { bytes, order, sheet, dry }: TableAsked,
  now: number,
  afterwards: (work: Promise<unknown>) => void,
): Promise<Outcome<TableRead>> {
  const table = parsedTable(bytes);
  if (!table.ok) return table;
  const [things, people, sites] = await Promise.all([
    thingsOf(services, session.company),
    services.companies.people(session.company),
    services.sites.all(session.company),
  ]);
  const sheets = things.newest.filter(({ kind }) => kind === "sheet");
  const usual = sheets.find(({ name }) => name === sheet);
  const columns = columnsOf(table.value.heads, usual?.content as unknown as ToleranceSheet | undefined);
  const fault = headFault(columns.filter(({ is }) => is !== "unread").map(placeOfColumn));
  if (fault) return { ok: false, refusal: fault };
  const { units, zone } = things.company;
  const read = readLines(table.value, (cells) => readLine(cells, { columns, order, units, zone }));
  const known = await services.ownNumbers.known(
    session.company,
    read.map(({ said }) => plainNumber(said.fields.number ?? "")),
  );
  const reading: Reading = { services, session, known, names: { people, sheets, sites, usual } };
  const judged: Line[] = [];
  for (const line of withoutTwice(read)) judged.push(await workOf(reading, line));
  // what is written is judged by the core when it is written, with the same answer
  const lines = dry ? await looked(services, session, judged, now) : ok(judged);
  if (!lines.ok) return lines;
  const unread = columns.flatMap((column) => (column.is === "unread" && column.head !== "" ? [column.head] : []));
  const view = viewOf(lines.value, unread, session);
  if (dry) return ok(view);
  const bad = lines.value.find((line) => outcomeOf(line) === "bad");
  if (bad) return refuse("table-lines-bad", "file", { count: view.sum.bad, line: bad.line });
  return written(services, session, lines.value, view, now, afterwards);
}

const readLines = ({ lines }: TableText, read: (cells: readonly string[]) => Omit<Line, "line">): readonly Line[] =>
  lines.map(({ line, cells }) => ({ line, ...read(cells) }));

async function written(
  services: Services,
  session: Session,
  lines: readonly Line[],
  view: TableRead,
  now: number,
  afterwards: (work: Promise<unknown>) => void,
): Promise<Outcome<TableRead>> {
  const asked = lines.flatMap(({ work }) => (work && "opening" in work ? [work] : []));
  const changed = lines.flatMap(({ work }) => (work && "facts" in work && work.facts.length > 0 ? [work] : []));
  const opened = await openJobs(services, session, asked, now, changed);
  if (!opened.ok) return opened;
  afterwards(
    (async () => {
      for (const { place } of [...asked, ...changed].slice(0, FOLLOWED)) await follow(services, place);
    })(),
  );
  return ok({ ...view, written: true });
}
