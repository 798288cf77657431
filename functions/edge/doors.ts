import { type Outcome, ok, type Refusal, refuse } from "#core/outcome/index.ts";
import { limits, notIn } from "./access/limits.ts";
import type { Session } from "./adapters/sessions.ts";
import { sameSecret } from "./chance.ts";
import { tokenIn } from "./cookie.ts";
import type { Route } from "./routes/route.ts";
import type { Services } from "./services.ts";

/** Lets through who may call a route, with the session where there must be one. */
export async function opened(services: Services, route: Route, request: Request): Promise<Outcome<Session | undefined>> {
  const [first] = route.who;
  if (first === "nobody") {
    const foreign = route.method === "GET" ? undefined : foreignFault(request);
    return foreign ? { ok: false, refusal: foreign } : ok(undefined);
  }
  if (first === "operator") return operatorOnly(services, request);
  const token = tokenIn(request);
  if (token === undefined) return refuse("session-missing", "session", {});
  const session = await services.sessions.find(token, services.clock());
  if (session === undefined) return notIn(services, limits.session, request, "session-missing", "session");
  if (session === "ended") return refuse("session-ended", "session", {});
  const foreign = route.method === "GET" ? undefined : foreignFault(request);
  if (foreign) return { ok: false, refusal: foreign };
  if (!(route.who as readonly string[]).includes(session.role)) return refuse("role-not-allowed", "session", { role: session.role });
  return ok(session);
}

async function operatorOnly(services: Services, request: Request): Promise<Outcome<undefined>> {
  const given = /^Operator ([^\s]+)$/.exec(request.headers.get("authorization") ?? "")?.[1] ?? "";
  // An empty key in the environment must not open the door to an empty header.
  const expected = services.environment.OPERATOR_KEY;
  const same = await sameSecret(given, expected);
  if (expected !== "" && same) return ok(undefined);
  return notIn(services, limits.operator, request, "session-missing", "authorization");
}

/**
 * A page of another origin can send the cookie along at most by a plain form, and a form cannot set this header. What the browser
 * itself says of where a request comes from (Fetch Metadata) must not speak against it either.
 */
function foreignFault(request: Request): Refusal | undefined {
  const site = request.headers.get("sec-fetch-site");
  if (site !== null && site !== "same-origin") return refuse("request-origin", "sec-fetch-site", {}).refusal;
  const origin = request.headers.get("origin");
  if (origin !== null && origin !== new URL(request.url).origin) return refuse("request-origin", "origin", {}).refusal;
  return request.headers.get("x-asburied") === "1" ? undefined : refuse("request-origin", "x-asburied", {}).refusal;
}
