import { refuse } from "#core/outcome/index.ts";
import { oldWarranty } from "#core/wire/index.ts";
import { setOldWarranties } from "../warranties/import.ts";
import { done, officeUp, route } from "./route.ts";

export const setOldWarranty = route({
  method: "PUT",
  path: "/api/warranties/old",
  says: "Sets one old warranty by the company's own number and part, with its scanned paper, which is stored first",
  who: officeUp,
  takes: oldWarranty,
  gives: { 204: "nothing" },
  async run({ services, session, input }) {
    if (input.end < input.start) return refuse("reading-out-of-range", "end", { found: input.end });
    if (input.paper !== undefined && !(await services.photos.get(session.company, input.paper)))
      return refuse("photo-unknown", "paper", {});
    const set = await setOldWarranties(services, session, [input]);
    return set.ok ? done() : set;
  },
});
