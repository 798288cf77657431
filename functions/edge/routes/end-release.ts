import { refuse } from "#core/outcome/index.ts";
import { done, officeUp, route } from "./route.ts";

export const endRelease = route({
  method: "POST",
  path: "/api/records/:record/releases/:release/end",
  says: "Ends the link of a released record at once",
  who: officeUp,
  gives: { 204: "nothing" },
  async run({ services, session, parameters, now }) {
    const { record = "", release = "" } = parameters;
    return (await services.releases.end(session.company, record, release, now)) ? done() : refuse("release-ended", "link", {});
  },
});
