import { refuse } from "#core/outcome/index.ts";
import { companyFact, companyFactKinds, entryMade, type TakenBack } from "#core/wire/index.ts";
import { change, companyPlace } from "../company/change.ts";
import { companyFactFault } from "../questions/enter.ts";
import { anyRole, json, route } from "./route.ts";

export const enterCompanyFact = route({
  method: "POST",
  path: "/api/company/facts",
  says: "Enters a tape study, a check of an instrument, that somebody was taught, or that such a fact was a mistake, into the company's own ledger; sent twice it is one entry",
  who: anyRole,
  takes: companyFact,
  gives: { 201: entryMade },
  async run({ services, session, input }) {
    const { id, kind, what } = input;
    if (session.role === "crew" && (kind === "taught" || kind === "taken-back"))
      return refuse("role-not-allowed", "kind", { role: session.role });
    const fault = companyFactFault(input, await services.companies.people(session.company));
    if (!fault.ok) return fault;
    if (kind === "taken-back") {
      const known = await services.companyFacts.ofKinds(companyPlace(session.company), companyFactKinds);
      const { entry } = what as TakenBack;
      if (!known.some((one) => one.id === entry)) return refuse("entry-unknown-entry", "what/entry", {});
    }
    const number = await change(services, session, { id, kind, what }, () => []);
    return number.ok ? json({ entry: id, number: number.value }, 201) : number;
  },
});
