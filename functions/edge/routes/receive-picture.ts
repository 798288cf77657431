import { refuse } from "#core/outcome/index.ts";
import { entryMade, received } from "#core/wire/index.ts";
import { sayInJob } from "../jobs/say-in-job.ts";
import { jobOf, json, officeUp, route } from "./route.ts";

export const receivePicture = route({
  method: "POST",
  path: "/api/jobs/:job/received",
  says: "Files a picture that came by another way than the app, with from whom, how and when; its photo is stored first",
  who: officeUp,
  takes: received,
  gives: { 201: entryMade },
  async run(call) {
    const { services, session, input, now } = call;
    const place = await jobOf(call);
    if (!place.ok) return place;
    const { item, tag, photo, from, how, when, id } = input;
    const stored = await services.photos.get(session.company, photo);
    if (!stored) return refuse("photo-unknown", "photo", {});
    const { bytes, type } = stored;
    const what = { item, ...(tag === undefined ? {} : { tag }), photo, bytes, type, how, when };
    const made = await sayInJob(services, session, place.value, {
      id,
      kind: "received-otherwise",
      contents: { what, who: { name: from } },
      at: now,
    });
    return made.ok ? json(made.value, 201) : made;
  },
});
