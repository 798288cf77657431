import { ok, refuse } from "#core/outcome/index.ts";
import { version } from "#core/wire/index.ts";
import { PROBLEM_TYPE, problem } from "#functions/shared/index.ts";
import { sayIn } from "../say.ts";
import { anyRole, json, route } from "./route.ts";

export const getVersion = route({
  method: "GET",
  path: "/api/company/versions/:digest",
  says: "The content of one version of a tolerance sheet, kit card, instrument or the settings",
  who: anyRole,
  gives: { 200: version },
  async run({ services, session, parameters }) {
    const found = await services.companies.version(session.company, parameters.digest ?? "");
    if (found) return json(found);
    // What an entry may not rest on is in conflict with the job; asked for by its address it is simply not there.
    const { refusal } = refuse("entry-unknown-version", "digest", {});
    const body = problem(refusal, 404, sayIn(session.language, session.units)(refusal));
    return ok(new Response(JSON.stringify(body), { status: 404, headers: { "content-type": PROBLEM_TYPE } }));
  },
});
