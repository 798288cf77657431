import { type Outcome, ok, type Refusal, refuse } from "#core/outcome/index.ts";
import { limits, notIn } from "./access/limits.ts";
import type { Session } from "./adapters/sessions.ts";
import { sameSecret, sha256Hex } from "./chance.ts";
import { tokenIn } from "./cookie.ts";
import type { Route } from "./routes/route.ts";
import type { Services } from "./services.ts";
import { behindRemembered } from "./shards/index.ts";

/** Who is let through: with a session where there must be one, and then with the services of its company. */
export interface Opened {
  readonly services: Services;
  readonly session?: Session;
}

/** Lets through who may call a route. Throws (`isClosed`) while the caller's company is being moved. */
export async function opened(services: Services, route: Route, request: Request): Promise<Outcome<Opened>> {
  const [first] = route.who;
  if (first === "nobody") {
    const foreign = route.method === "GET" ? undefined : foreignFault(request);
    return foreign ? { ok: false, refusal: foreign } : ok({ services });
  }
  if (first === "operator") return operatorOnly(services, request);
  const token = tokenIn(request);
  if (token === undefined) return refuse("session-missing", "session", {});
  const [session, home] = await behindRemembered(
    services,
    await sha256Hex(token),
    async (there) => [await there.sessions.find(token, services.clock(), route.withPeople), there] as const,
  );
  if (session === undefined) return notIn(services, limits.session, request, "session-missing", "session");
  if (session === "ended") return refuse("session-ended", "session", {});
  const fault = mayNot(route, request, session);
  if (fault) return { ok: false, refusal: fault };
  if (route.withPeople) services.knownSessions.put(session, services.clock());
  return ok({ services: home, session });
}

/**
 * The caller as this isolate was told of it before, for work that the database does only while that still holds. Undefined where
 * nothing is known, or it would be refused: whoever is answered has been asked for.
 */
export async function openedAsKnown(services: Services, route: Route, request: Request): Promise<Required<Opened> | undefined> {
  const token = tokenIn(request);
  if (route.asKnown === undefined || token === undefined) return undefined;
  const session = services.knownSessions.get(await sha256Hex(token), services.clock());
  if (session === undefined || mayNot(route, request, session)) return undefined;
  return { services: await behindRemembered(services, session.token, async (there) => there), session };
}

function mayNot(route: Route, request: Request, { role }: Session): Refusal | undefined {
  const foreign = route.method === "GET" ? undefined : foreignFault(request);
  if (foreign) return foreign;
  return (route.who as readonly string[]).includes(role) ? undefined : refuse("role-not-allowed", "session", { role }).refusal;
}

async function operatorOnly(services: Services, request: Request): Promise<Outcome<Opened>> {
  const given = /^Operator ([^\s]+)$/.exec(request.headers.get("authorization") ?? "")?.[1] ?? "";
  // An empty key in the environment must not open the door to an empty header.
  const expected = services.environment.OPERATOR_KEY;
  const same = await sameSecret(given, expected);
  if (expected !== "" && same) return ok({ services });
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
