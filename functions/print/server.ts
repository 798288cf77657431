import { createServer, type IncomingMessage, type Server } from "node:http";
import { type Outcome, type Refusal, refuse } from "#core/outcome/index.ts";
import {
  bearer,
  checkToken,
  type MessageAnswer,
  type MessageAsked,
  type PrintAnswer,
  type PrintRequest,
  printSubject,
  problemResponse,
  type Say,
} from "#functions/shared/index.ts";
import { readMessageRequest, readPrintRequest } from "./request.ts";

export interface PrintServerSettings {
  readonly secret: string;
  /** Now, in milliseconds. */
  readonly now: () => number;
  readonly say: Say;
  /** Whether there is a browser to print with. */
  readonly ready: () => Promise<Outcome<null>>;
  readonly print: (request: PrintRequest) => Promise<Outcome<PrintAnswer>>;
  /** Makes a message of mail, and sends it where asked. */
  readonly message: (asked: MessageAsked) => Promise<Outcome<MessageAnswer>>;
  /** Whether there is a mail service to send with. */
  readonly sends: boolean;
  /** Told of every bug, one line each. */
  readonly report: (line: string) => void;
}

/** A model and a ledger of some thousand entries, far from it. Own. */
const MOST_BODY = 64 << 20;

/** `GET /health`, `POST /print`, and `GET` and `POST /message`; everything else is refused. */
export function printServer(settings: PrintServerSettings): Server {
  const server = createServer(async (request, response) => {
    const answer = await answerTo(request, settings).catch((thrown: Error) => {
      settings.report(thrown.stack ?? thrown.message);
      return problemResponse({ code: "print-failed", place: "print", figures: { why: "bug" } }, settings.say);
    });
    response.writeHead(answer.status, Object.fromEntries(answer.headers));
    response.end(await answer.text());
  });
  // Longer than workerd keeps a connection, else it sends on one that has just been closed.
  server.keepAliveTimeout = 75_000;
  server.headersTimeout = 80_000;
  return server;
}

async function answerTo(request: IncomingMessage, settings: PrintServerSettings): Promise<Response> {
  const refused = (refusal: Refusal): Response => problemResponse(refusal, settings.say, header(request, "x-request-id"));
  const body = await readBody(request);
  const route = `${request.method} ${new URL(request.url ?? "/", "http://print").pathname}`;
  if (route === "GET /health") {
    const ready = await settings.ready();
    return ready.ok ? Response.json({ ok: true }) : refused(ready.refusal);
  }
  if (route === "GET /message") return Response.json({ sends: settings.sends });
  if (route !== "POST /print" && route !== "POST /message") return refused({ code: "route-unknown", place: "route", figures: {} });
  if (body === undefined) return refused(refuse("request-shape", "body", { most: MOST_BODY }).refusal);
  const token = bearer(header(request, "authorization"));
  const allowed = await checkToken(settings.secret, token, { audience: "print", subject: await printSubject(body), now: settings.now() });
  if (!allowed.ok) return refused(allowed.refusal);
  if (route === "POST /message") {
    const message = readMessageRequest(body);
    if (!message.ok) return refused(message.refusal);
    const made = await settings.message(message.value);
    return made.ok ? Response.json(made.value) : refused(made.refusal);
  }
  const asked = readPrintRequest(body);
  if (!asked.ok) return refused(asked.refusal);
  const answer = await settings.print(asked.value);
  return answer.ok ? Response.json(answer.value) : refused(answer.refusal);
}

const header = (request: IncomingMessage, name: string): string | undefined => {
  const value = request.headers[name];
  return typeof value === "string" ? value : undefined;
};

/** Reads all that comes, so that the answer is never lost to a reset; keeps no more than a request may hold. */
async function readBody(request: IncomingMessage): Promise<Uint8Array<ArrayBuffer> | undefined> {
  const chunks: Buffer[] = [];
  let length = 0;
  for await (const chunk of request as AsyncIterable<Buffer>) {
    length += chunk.length;
    if (length <= MOST_BODY) chunks.push(chunk);
  }
  return length <= MOST_BODY ? new Uint8Array(Buffer.concat(chunks)) : undefined;
}
