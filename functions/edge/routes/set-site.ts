import { newSite, siteSet } from "#core/wire/index.ts";
import { setSite as set } from "../openings/set-site.ts";
import { json, officeUp, route } from "./route.ts";

export const setSite = route({
  method: "POST",
  path: "/api/sites",
  says: "Sets a site: address, position, height mark and tie marks; its jobs take it over",
  who: officeUp,
  takes: newSite,
  gives: { 201: siteSet },
  async run({ services, session, input, now }) {
    const made = await set(services, session, input, now);
    return made.ok ? json(made.value, 201) : made;
  },
});
