import { sheetFaults } from "#core/job/index.ts";
import { contentDigest, type Json } from "#core/ledger/index.ts";
import { ok } from "#core/outcome/index.ts";
import { sheet, sheetProblem, versionMade } from "#core/wire/index.ts";
import { PROBLEM_TYPE, problem } from "#functions/shared/index.ts";
import { setVersion } from "../company/change.ts";
import { savedFrom } from "../company/saved-from.ts";
import { sayIn } from "../say.ts";
import { json, officeUp, route } from "./route.ts";

export const setSheet = route({
  method: "POST",
  path: "/api/company/sheets",
  says: "Saves a tolerance sheet, or tells all its faults",
  who: officeUp,
  takes: sheet,
  heads: { "if-match": "The digest of the version that this one was made from, in quotes; another that came meanwhile refuses it" },
  gives: { 201: versionMade, 422: sheetProblem },
  async run({ services, session, input, request }) {
    const content = input as Json;
    // A sheet too deep for its canonical form is told as such, before anything walks through it.
    const digest = await contentDigest(services.digest, content);
    if (!digest.ok) return digest;
    const faults = sheetFaults(content);
    const first = faults[0];
    if (first) {
      const say = sayIn(session.language, session.units);
      const told = faults.map((fault) => ({ ...fault, says: say(fault) }));
      const body = JSON.stringify({ ...problem(first, 422, say(first)), faults: told });
      return ok(new Response(body, { status: 422, headers: { "content-type": PROBLEM_TYPE } }));
    }
    const name = (content as { id: string }).id;
    const set = await setVersion(services, session, { kind: "sheet", name, content, from: savedFrom(request) });
    return set.ok ? json(set.value, 201) : set;
  },
});
