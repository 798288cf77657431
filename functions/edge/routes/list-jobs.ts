import { jobs } from "#core/wire/index.ts";
import { listOf } from "../jobs/view.ts";
import { anyRole, json, route } from "./route.ts";

export const listJobs = route({
  method: "GET",
  path: "/api/jobs",
  says: "The company's jobs with their coverings",
  who: anyRole,
  gives: { 200: jobs },
  async run({ services, session }) {
    return json(await listOf(services, session.company));
  },
});
