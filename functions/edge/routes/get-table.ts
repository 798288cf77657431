import { ok, refuse } from "#core/outcome/index.ts";
import { type ExportTable, exportTables } from "#core/record/index.ts";
import { exported } from "../tables/export.ts";
import { officeUp, type Route, route } from "./route.ts";

const says: Readonly<Record<ExportTable, string>> = {
  jobs: "The company's jobs as CSV, with the heads by which they are read in again",
  readings: "Readings as they were typed, as CSV",
  findings: "Findings with their figures in SI units, as CSV",
};

const getTable = (table: ExportTable): Route =>
  route({
    method: "GET",
    path: `/api/tables/${table}`,
    says: says[table],
    who: officeUp,
    asks: { job: "One job instead of all" },
    gives: { 200: "csv" },
    async run({ services, session, request }) {
      const asked = new URL(request.url).searchParams.get("job");
      const { company } = session;
      if (asked !== null && !(await services.jobs.hasJob({ company, job: asked }))) return refuse("job-unknown", "job", {});
      const jobs = asked === null ? await services.jobs.jobs(company) : [asked];
      const headers = {
        "content-type": "text/csv; charset=utf-8; header=present",
        "content-disposition": `attachment; filename="${table}.csv"`,
      };
      return ok(new Response(await exported(services, session, table, jobs), { headers }));
    },
  });

export const tables: readonly Route[] = exportTables.map(getTable);
