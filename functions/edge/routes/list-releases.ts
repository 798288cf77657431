import { refuse } from "#core/outcome/index.ts";
import { releases } from "#core/wire/index.ts";
import { json, officeUp, route } from "./route.ts";

export const listReleases = route({
  method: "GET",
  path: "/api/records/:record/releases",
  says: "To whom a record was released, and whether that link still opens; the links themselves are kept nowhere",
  who: officeUp,
  gives: { 200: releases },
  async run({ services, session, parameters }) {
    const record = await services.records.get(session.company, parameters.record ?? "");
    if (record === undefined) return refuse("record-unknown", "record", {});
    const rows = await services.releases.ofRecord(session.company, record.id);
    return json({
      releases: rows.map(({ hash, receiver, released, ended }) => ({
        release: hash,
        to: receiver,
        released,
        ...(ended === null ? {} : { ended }),
      })),
    });
  },
});
