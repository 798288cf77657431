import type { Services } from "../services.ts";
import { afterWorkOfAll } from "./after-work.ts";
import type { Office } from "./notice.ts";

/** What a notice needs, out of the company's own rows. */
export const officeOf = (services: Services, company: string): Office => ({
  settings: () => services.companies.settings(company),
  language: async () => (await services.companies.get(company))?.language ?? "en",
  jobs: () => afterWorkOfAll(services, company),
  old: () => services.oldWarranties.all(company),
  mail: () => services.machines.mail(),
  send: (message) => services.machines.message({ message, send: true }),
});
