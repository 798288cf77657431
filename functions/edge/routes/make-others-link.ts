import { refuse } from "#core/outcome/index.ts";
import { othersLinkAsked, othersLinkMade } from "#core/wire/index.ts";
import { currentJob } from "../jobs/read.ts";
import { jobOf, json, officeUp, route } from "./route.ts";

const DAY_MS = 24 * 3_600_000;
/** Usual life of a link, days (own). */
const USUAL_DAYS = 14;

export const makeOthersLink = route({
  method: "POST",
  path: "/api/jobs/:job/others-links",
  says: "A link for somebody who does not sign in: one step of this job, ended by its use",
  who: officeUp,
  takes: othersLinkAsked,
  gives: { 201: othersLinkMade },
  async run(call) {
    const { services, session, input, now } = call;
    const place = await jobOf(call);
    if (!place.ok) return place;
    const { step, what, days = USUAL_DAYS } = input;
    const { state } = await currentJob(services, place.value);
    if (!state.sheet?.steps.some(({ id }) => id === step)) return refuse("entry-unknown-item", "step", { item: step });
    const ends = now + days * DAY_MS;
    const token = await services.othersLinks.make({ ...place.value, step, what, madeBy: session.person, made: now, ends });
    return json({ link: `/others/${token}`, ends }, 201);
  },
});
