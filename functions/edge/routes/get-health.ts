import { health } from "#core/wire/index.ts";
import { everyone, json, route } from "./route.ts";

export const getHealth = route({
  method: "GET",
  path: "/api/health",
  says: "The edge is alive",
  who: everyone,
  gives: { 200: health },
  run: async () => json({ alive: true }),
});
