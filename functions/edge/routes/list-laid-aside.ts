import { laidAsideList } from "#core/wire/index.ts";
import { laidAsideOf } from "../photos/laid-aside.ts";
import { json, officeUp, route } from "./route.ts";

export const listLaidAside = route({
  method: "GET",
  path: "/api/laid-aside",
  says: "Work on photos that did not go through several times: what, why, how often, and when it is tried again",
  who: officeUp,
  gives: { 200: laidAsideList },
  run: async ({ services, session }) => json(await laidAsideOf(services, session.company)),
});
