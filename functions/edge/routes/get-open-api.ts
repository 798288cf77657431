import { json as anyJson, type Operation, openApi } from "#core/wire/index.ts";
import { everyone, json, type Route, route } from "./route.ts";

/** The document of all routes, this one too. */
export function describing(others: readonly Route[]): Route {
  const own: Route = route({
    method: "GET",
    path: "/api/openapi.json",
    says: "This document",
    who: everyone,
    gives: { 200: anyJson },
    run: async () => json(openApi([...others, own] as readonly Operation[])),
  });
  return own;
}
