import { buriedList as shape } from "#core/wire/index.ts";
import { buriedList } from "../jobs/buried-list.ts";
import { json, officeUp, route } from "./route.ts";

export const listAboutToBeBuried = route({
  method: "GET",
  path: "/api/about-to-be-buried",
  says: "What the running jobs have to say before something is buried, the soonest covering first",
  who: officeUp,
  gives: { 200: shape },
  run: async ({ services, session }) => json(await buriedList(services, session.company)),
});
