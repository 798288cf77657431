import { refuse } from "#core/outcome/index.ts";
import { entryMade, look } from "#core/wire/index.ts";
import { currentJob } from "../jobs/read.ts";
import { sayInJob } from "../jobs/say-in-job.ts";
import { jobOf, json, officeUp, route } from "./route.ts";

export const lookAtPicture = route({
  method: "POST",
  path: "/api/jobs/:job/looks",
  says: "What a person sees on a picture: shows it, does not show it, cannot tell",
  who: officeUp,
  takes: look,
  gives: { 201: entryMade },
  async run(call) {
    const { services, session, input, now } = call;
    const place = await jobOf(call);
    if (!place.ok) return place;
    const { picture, says, id } = input;
    const { state } = await currentJob(services, place.value);
    const there = ["picture-taken", "received-otherwise"].some((kind) => state.byKind.get(kind)?.some((fact) => fact.id === picture));
    if (!there) return refuse("entry-unknown-entry", "picture", {});
    const made = await sayInJob(services, session, place.value, {
      id,
      kind: "picture-looked-at",
      contents: { what: { picture, says } },
      at: now,
    });
    return made.ok ? json(made.value, 201) : made;
  },
});
