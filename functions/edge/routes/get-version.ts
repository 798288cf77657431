import { refuse } from "#core/outcome/index.ts";
import { version } from "#core/wire/index.ts";
import { anyRole, json, route } from "./route.ts";

export const getVersion = route({
  method: "GET",
  path: "/api/company/versions/:digest",
  says: "The content of one version of a tolerance sheet, kit card, instrument or the settings",
  who: anyRole,
  gives: { 200: version },
  async run({ services, session, parameters }) {
    const found = await services.companies.version(session.company, parameters.digest ?? "");
    return found ? json(found) : refuse("entry-unknown-version", "digest", {});
  },
});
