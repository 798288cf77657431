import { createServer, type IncomingMessage, type Server } from "node:http";
import { type Outcome, ok, type Refusal, refuse } from "#core/outcome/index.ts";
import { isRegion, MOST_REGIONS, type PhotoFacts, type Rendition } from "#core/photo/index.ts";
import { bearer, checkToken, isCompanyId, isSha, problemResponse, type Say } from "#functions/shared/index.ts";
import type { BlurAsked } from "./blur.ts";
import type { MarkDrawn } from "./mark.ts";

export interface MediaServerSettings {
  readonly secret: string;
  /** Now, in milliseconds. */
  readonly now: () => number;
  readonly say: Say;
  readonly read: (company: string, sha: string) => Promise<Outcome<PhotoFacts>>;
  readonly blur: (asked: BlurAsked) => Promise<Outcome<readonly Rendition[]>>;
  /** Draws a company's mark anew. */
  readonly mark: (company: string, sha: string) => Promise<Outcome<MarkDrawn>>;
  /** Told of every bug, one line each. */
  readonly report: (line: string) => void;
}

/** A request names one photo; more than this is none. */
const MOST_BODY = 4_096;

/** `GET /health`, `POST /read`, `POST /blur` and `POST /mark`; everything else is refused. */
export function mediaServer(settings: MediaServerSettings): Server {
  const server = createServer(async (request, response) => {
    const answer = await answerTo(request, settings).catch((thrown: Error) => {
      settings.report(thrown.stack ?? thrown.message);
      return problemResponse({ code: "media-unavailable", place: "media", figures: {} }, settings.say);
    });
    response.writeHead(answer.status, Object.fromEntries(answer.headers));
    response.end(await answer.text());
  });
  // Longer than workerd keeps a connection, else it sends on one that has just been closed.
  server.keepAliveTimeout = 75_000;
  server.headersTimeout = 80_000;
  return server;
}

async function answerTo(request: IncomingMessage, settings: MediaServerSettings): Promise<Response> {
  const refused = (refusal: Refusal): Response => problemResponse(refusal, settings.say, header(request, "x-request-id"));
  const body = await readBody(request);
  const route = `${request.method} ${new URL(request.url ?? "/", "http://media").pathname}`;
  if (route === "GET /health") return Response.json({ ok: true });
  if (!["POST /read", "POST /blur", "POST /mark"].includes(route)) return refused({ code: "route-unknown", place: "route", figures: {} });
  const asked = readAsked(body);
  if (!asked.ok) return refused(asked.refusal);
  const { company, sha, parts } = asked.value;
  const token = bearer(header(request, "authorization"));
  const allowed = await checkToken(settings.secret, token, { audience: "media", subject: `${company}/${sha}`, now: settings.now() });
  if (!allowed.ok) return refused(allowed.refusal);
  if (route === "POST /mark") {
    const drawn = await settings.mark(company, sha);
    return drawn.ok ? Response.json(drawn.value) : refused(drawn.refusal);
  }
  const isBlur = route === "POST /blur";
  if (isBlur && parts === undefined) return refused({ code: "request-shape", place: "body/regions", figures: {} });
  const answer = isBlur && parts ? await settings.blur({ company, sha, ...parts }) : await settings.read(company, sha);
  return answer.ok ? Response.json(answer.value) : refused(answer.refusal);
}

const header = (request: IncomingMessage, name: string): string | undefined => {
  const value = request.headers[name];
  return typeof value === "string" ? value : undefined;
};

/** Reads all that comes, so that the answer is never lost to a reset; keeps no more than a request may hold. */
async function readBody(request: IncomingMessage): Promise<string | undefined> {
  const chunks: Buffer[] = [];
  let length = 0;
  for await (const chunk of request as AsyncIterable<Buffer>) {
    length += chunk.length;
    if (length <= MOST_BODY) chunks.push(chunk);
  }
  return length <= MOST_BODY ? Buffer.concat(chunks).toString("utf8") : undefined;
}

interface Asked {
  readonly company: string;
  readonly sha: string;
  /** What is to be blurred, where it is asked for in its shape. */
  readonly parts?: Pick<BlurAsked, "digest" | "regions">;
}

function partsOf(digest: unknown, regions: unknown): Pick<Asked, "parts"> {
  if (typeof digest !== "string" || !isSha(digest) || !Array.isArray(regions)) return {};
  return regions.length > 0 && regions.length <= MOST_REGIONS && regions.every(isRegion) ? { parts: { digest, regions } } : {};
}

function readAsked(body: string | undefined): Outcome<Asked> {
  if (body === undefined) return refuse("request-shape", "body", { most: MOST_BODY });
  let parsed: unknown;
  try {
    parsed = JSON.parse(body);
  } catch {
    return refuse("request-shape", "body");
  }
  const { company, sha, digest, regions } = (typeof parsed === "object" && parsed !== null ? parsed : {}) as Record<string, unknown>;
  if (typeof company !== "string" || !isCompanyId(company)) return refuse("request-shape", "body/company");
  if (typeof sha !== "string" || !isSha(sha)) return refuse("request-shape", "body/sha");
  return ok({ company, sha, ...partsOf(digest, regions) });
}
