import { ready } from "#core/wire/index.ts";
import { readiness } from "../readiness.ts";
import { everyone, json, route } from "./route.ts";

export const getReady = route({
  method: "GET",
  path: "/api/ready",
  says: "Whether database, store, media and print answer, each by itself",
  who: everyone,
  gives: { 200: ready, 503: ready },
  async run({ services }) {
    const state = await readiness(services);
    return json(state, state.ready ? 200 : 503);
  },
});
