import { jobDesign } from "#core/wire/index.ts";
import { designOf } from "../jobs/design.ts";
import { anyRole, jobOf, json, route } from "./route.ts";

export const getJobDesign = route({
  method: "GET",
  path: "/api/jobs/:job/design",
  says: "What a job's design and kit cards lead to, and the design check before the dig",
  who: anyRole,
  gives: { 200: jobDesign },
  async run(call) {
    const place = await jobOf(call);
    return place.ok ? json(await designOf(call.services, place.value)) : place;
  },
});
