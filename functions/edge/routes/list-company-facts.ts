import { companyFactKinds, companyFacts } from "#core/wire/index.ts";
import { companyPlace } from "../company/change.ts";
import { json, officeUp, route } from "./route.ts";

export const listCompanyFacts = route({
  method: "GET",
  path: "/api/company/facts",
  says: "The company's own facts: tape studies, checks of instruments, who was taught, and which of them were taken back",
  who: officeUp,
  gives: { 200: companyFacts },
  async run({ services, session }) {
    return json({ facts: await services.companyFacts.ofKinds(companyPlace(session.company), companyFactKinds) });
  },
});
