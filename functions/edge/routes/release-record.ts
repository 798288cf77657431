import { refuse } from "#core/outcome/index.ts";
import { newRelease, releaseMade } from "#core/wire/index.ts";
import { sayInJob } from "../jobs/say-in-job.ts";
import { json, officeUp, route } from "./route.ts";

export const releaseRecord = route({
  method: "POST",
  path: "/api/records/:record/releases",
  says: "Releases an issued record of the customer's edition: told in the job, with a link for its receiver that is told once",
  who: officeUp,
  takes: newRelease,
  gives: { 201: releaseMade },
  async run({ services, session, parameters, input, now }) {
    const { company } = session;
    const record = await services.records.get(company, parameters.record ?? "");
    if (record === undefined) return refuse("record-unknown", "record", {});
    if (record.edition !== "customer") return refuse("release-company-edition", "record", {});
    const { token, made } = await services.releases.make({ company, record: record.id, receiver: input.to, released: now });
    const contents = { what: { version: record.version, to: input.to } };
    const place = { company, job: record.job };
    const said = await sayInJob(services, session, place, { kind: "record-released", contents, at: now, also: () => [made] });
    return said.ok ? json({ link: `/released/${token}` }, 201) : said;
  },
});
