import { othersLinks } from "#core/wire/index.ts";
import { jobOf, json, officeUp, route } from "./route.ts";

export const listOthersLinks = route({
  method: "GET",
  path: "/api/jobs/:job/others-links",
  says: "The links of this job for those who do not sign in, and what became of them; the links themselves are kept nowhere",
  who: officeUp,
  gives: { 200: othersLinks },
  async run(call) {
    const place = await jobOf(call);
    if (!place.ok) return place;
    const links = await call.services.othersLinks.ofJob(place.value);
    return json({
      links: links.map(({ hash, step, what, made, ends, used, withdrawn }) => ({
        link: hash,
        step,
        what,
        made,
        ends,
        is: used !== null ? "used" : withdrawn !== null ? "withdrawn" : ends <= call.now ? "over" : "open",
        ...(used === null ? {} : { used }),
      })),
    });
  },
});
