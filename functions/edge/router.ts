import { Hono } from "hono";
import { type Outcome, type Refusal, refuse } from "#core/outcome/index.ts";
import { PROBLEM_TYPE, problemResponse } from "#functions/shared/index.ts";
import type { Session } from "./adapters/sessions.ts";
import { newId } from "./chance.ts";
import { counters } from "./counters.ts";
import { type Opened, opened, openedAsKnown } from "./doors.ts";
import type { Environment } from "./environment.ts";
import { guarded } from "./headers.ts";
import { inputOf } from "./input.ts";
import { log, thrownOf } from "./log.ts";
import { languageOf, page } from "./page.ts";
import { Blocks } from "./photos/blocks.ts";
import type { Call, Route } from "./routes/route.ts";
import { sayIn } from "./say.ts";
import { type Clock, servicesOf } from "./services.ts";
import { isClosed } from "./shards/index.ts";

export type Edge = Hono<{ Bindings: Environment }>;

/** The router of these routes and no others. */
export function routerOf(routes: readonly Route[], clock: Clock): Edge {
  const app: Edge = new Hono<{ Bindings: Environment }>();
  for (const route of routes) {
    app.on(route.method, route.path, (context) => {
      const afterwards = (work: Promise<unknown>) =>
        context.executionCtx.waitUntil(
          work.catch((thrown: unknown) => log({ event: "afterwards-broke", route: nameOf(route), thrown: thrownOf(thrown) })),
        );
      return answered(route, { environment: context.env, request: context.req.raw, parameters: context.req.param(), clock, afterwards });
    });
  }
  app.notFound(async (context) => {
    const request = context.req.raw;
    const requestId = newId();
    if (context.req.path.startsWith("/api/")) {
      await discarded(request);
      return guarded(
        problemResponse(refuse("route-unknown", "route", {}).refusal, sayIn(languageOf(request), "inch"), requestId),
        request,
        requestId,
      );
    }
    const asset = context.env.ASSETS ? await context.env.ASSETS.fetch(request) : page(request, "route-unknown");
    return guarded(asset, request, requestId);
  });
  return app;
}

const nameOf = ({ method, path }: Route): string => `${method} ${path}`;

interface Asked {
  readonly environment: Environment;
  readonly request: Request;
  readonly parameters: Readonly<Record<string, string>>;
  readonly clock: Clock;
  readonly afterwards: Call["afterwards"];
}

async function answered(route: Route, asked: Asked): Promise<Response> {
  const { request, clock, environment } = asked;
  const requestId = newId();
  const began = clock();
  let session: Session | undefined;
  const known = (found: Session | undefined) => {
    session = found;
  };
  try {
    const outcome = await ran(route, asked, known).catch((thrown: unknown) => moving(request, thrown));
    const response = outcome.ok ? outcome.value : refused(outcome.refusal, request, session, requestId);
    const milliseconds = clock() - began;
    counters.note(nameOf(route), response.status, milliseconds);
    if (environment.LOG_ANSWERS === "yes")
      log({
        event: "answered",
        request: requestId,
        route: nameOf(route),
        status: response.status,
        milliseconds,
        ...(outcome.ok ? {} : { code: outcome.refusal.code }),
        ...(session ? { role: session.role } : {}),
      });
    return guarded(response, request, requestId);
  } catch (thrown) {
    counters.note(nameOf(route), 500, clock() - began);
    log({ event: "broke", request: requestId, route: nameOf(route), thrown: thrownOf(thrown) });
    await discarded(request);
    const body = {
      type: "about:blank",
      title: "The edge made a mistake",
      status: 500,
      detail: "Nothing was lost on the phone. Try again.",
      requestId,
    };
    return guarded(new Response(JSON.stringify(body), { status: 500, headers: { "content-type": PROBLEM_TYPE } }), request, requestId);
  }
}

/** A body that took longer has its sender asked for once more. */
const SLOWLY_MS = 5_000;

/** The company has left the place that was remembered, and nothing was written: its new one is asked for. */
function notHere(thrown: unknown): undefined {
  if (!isClosed(thrown)) throw thrown;
}

/** After how long it is worth asking again. */
const MOVING_SECONDS = 2;

/** The database refused because the company is being moved: nothing was written, and the phone sends again. */
async function moving(request: Request, thrown: unknown): Promise<Outcome<Response>> {
  if (!isClosed(thrown)) throw thrown;
  await discarded(request);
  return refuse("company-moving", "company", { seconds: MOVING_SECONDS });
}

const refused = (refusal: Refusal, request: Request, session: Session | undefined, requestId: string): Response =>
  problemResponse(refusal, sayIn(session?.language ?? languageOf(request), session?.units ?? "inch"), requestId);

async function ran(route: Route, asked: Asked, known: (session: Session | undefined) => void): Promise<Outcome<Response>> {
  const { environment, request, parameters, clock, afterwards } = asked;
  const now = clock();
  const services = servicesOf(environment, clock);
  const callOf = ({ services, session }: Opened, input: unknown): Call<never> => ({
    services,
    get session(): Session {
      if (session === undefined) throw new Error(`${route.path} has no session`);
      return session;
    },
    parameters,
    input: input as never,
    request,
    now,
    afterwards,
  });

  const before = await openedAsKnown(services, route, request);
  const early = before && (await inputOf(route, request));
  const done = before && early?.ok ? await route.asKnown?.(callOf(before, early.value)).catch(notHere) : undefined;
  if (done) {
    known(before?.session);
    return done;
  }
  const door = await opened(services, route, request);
  if (!door.ok) {
    await discarded(request);
    return door;
  }
  known(door.value.session);
  const input = early ?? (await inputOf(route, request));
  if (!input.ok) return input;
  // a body that comes after the door may take half an hour, and whoever was let in may be gone by then
  const still = early === undefined && clock() - now > SLOWLY_MS ? await opened(services, route, request) : door;
  if (!still.ok) return still;
  const outcome = await route.run(callOf(still.value, input.value));
  if (!outcome.ok) await discarded(request);
  return outcome;
}

/** A refusal that is sent before the body is read reaches some phones as a broken connection. */
async function discarded(request: Request): Promise<void> {
  if (request.body === null || request.bodyUsed || request.body.locked) return;
  await new Blocks(request.body).discard(32 << 20);
}
