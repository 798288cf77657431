import { refuse } from "#core/outcome/index.ts";
import { done, jobOf, officeUp, route } from "./route.ts";

export const withdrawOthersLink = route({
  method: "POST",
  path: "/api/jobs/:job/others-links/:link/withdraw",
  says: "Ends a link at once",
  who: officeUp,
  gives: { 204: "nothing" },
  async run(call) {
    const place = await jobOf(call);
    if (!place.ok) return place;
    const ended = await call.services.othersLinks.withdraw(place.value, call.parameters.link ?? "", call.now);
    return ended ? done() : refuse("others-link-ended", "link", {});
  },
});
