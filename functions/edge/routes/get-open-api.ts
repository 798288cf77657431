import { ok } from "#core/outcome/index.ts";
import * as wire from "#core/wire/index.ts";
import { statusOf } from "#functions/shared/index.ts";
import { everyone, type Route, route } from "./route.ts";

/** The document of all routes, this one too. */
export function describing(others: readonly Route[]): Route {
  let text: string | undefined;
  const own: Route = route({
    method: "GET",
    path: "/api/openapi.json",
    says: "This document",
    who: everyone,
    gives: { 200: wire.json },
    async run() {
      text ??= JSON.stringify(wire.openApi([...others, own] as readonly wire.Operation[], { names: wire, statuses: statusOf }));
      return ok(new Response(text, { headers: { "content-type": "application/json" } }));
    },
  });
  return own;
}
