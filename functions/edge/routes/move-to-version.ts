import { versionsTaken } from "#core/job/index.ts";
import { refuse } from "#core/outcome/index.ts";
import { entryMade, versionMove } from "#core/wire/index.ts";
import { currentJob } from "../jobs/read.ts";
import { sayInJob } from "../jobs/say-in-job.ts";
import { jobOf, json, officeUp, route } from "./route.ts";

export const moveToVersion = route({
  method: "POST",
  path: "/api/jobs/:job/versions",
  says: "A job takes over another version of its tolerance sheet or of a kit card, by an entry of its own ledger",
  who: officeUp,
  takes: versionMove,
  gives: { 201: entryMade },
  async run(call) {
    const place = await jobOf(call);
    if (!place.ok) return place;
    const { services, session, input, now } = call;
    const { id, digest } = input;
    const [found, { state }] = await Promise.all([services.companies.version(session.company, digest), currentJob(services, place.value)]);
    if (found?.kind !== "sheet" && found?.kind !== "kit card") return refuse("entry-unknown-version", "digest", { digest });
    const { kind: thing, name, number } = found;
    const entered = state.facts.some((fact) => fact.id === id);
    const isHeld = versionsTaken(state).some((taken) => taken.current && taken.thing === thing && taken.digest === digest);
    if (isHeld && !entered) return refuse("version-held", "digest", {});
    const contents = { what: { thing, name, number, digest } };
    const made = await sayInJob(services, session, place.value, {
      ...(id === undefined ? {} : { id }),
      kind: "version-taken-over",
      contents,
      at: now,
    });
    return made.ok ? json(made.value, 201) : made;
  },
});
