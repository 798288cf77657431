import { clearances } from "#core/job/index.ts";
import { CSV_MARK, csvLine, type ExportTable, exportHeads, exportRows, makeSayer } from "#core/record/index.ts";
import type { Place } from "../adapters/ledgers.ts";
import type { Session } from "../adapters/sessions.ts";
import { currentFindings } from "../jobs/findings.ts";
import { currentJob } from "../jobs/read.ts";
import type { Services } from "../services.ts";

/** A table over some jobs of the company, one job after the other, so that however many there are one is held at a time. */
export async function exported(
  services: Services,
  session: Session,
  table: ExportTable,
  jobs: readonly string[],
): Promise<ReadableStream<Uint8Array>> {
  const { company, language, units } = session;
  const people = Object.fromEntries((await services.companies.people(company)).map(({ id, name }) => [id, name]));
  const encoder = new TextEncoder();
  const linesOf = async (place: Place): Promise<string> => {
    const job = await currentJob(services, place);
    const { state } = job;
    const { findings } = await currentFindings(services, place, job);
    const zone = state.opened?.zone ?? "UTC";
    const sayer = makeSayer({ language, units, zone, ...(state.sheet && { sheet: state.sheet }) });
    const now = clearances(state, findings, services.clock());
    return exportRows(table, { job: place.job, state, findings, clearances: now, sayer, people, language }).map(csvLine).join("");
  };
  const waiting = [...jobs];
  return new ReadableStream<Uint8Array>({
    start(controller) {
      controller.enqueue(encoder.encode(`${CSV_MARK}${csvLine(exportHeads(table, language))}`));
    },
    async pull(controller) {
      const job = waiting.shift();
      if (job === undefined) controller.close();
      else controller.enqueue(encoder.encode(await linesOf({ company, job })));
    },
  });
}
