import { ledger } from "#core/wire/index.ts";
import { companyPlace } from "../company/change.ts";
import { ledgerOf } from "../jobs/read.ts";
import { json, officeUp, route } from "./route.ts";

export const getCompanyLedger = route({
  method: "GET",
  path: "/api/company/ledger",
  says: "The company's own ledger",
  who: officeUp,
  gives: { 200: ledger },
  async run({ services, session }) {
    const place = companyPlace(session.company);
    return json(ledgerOf(place.job, await services.ledgers.read(place), []));
  },
});
