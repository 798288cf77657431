import { job } from "#core/wire/index.ts";
import { viewOf } from "../jobs/view.ts";
import { anyRole, jobOf, json, route } from "./route.ts";

export const getJob = route({
  method: "GET",
  path: "/api/jobs/:job",
  says: "A job with its findings and clearances",
  who: anyRole,
  gives: { 200: job },
  async run(call) {
    const place = await jobOf(call);
    return place.ok ? json(await viewOf(call.services, place.value)) : place;
  },
});
