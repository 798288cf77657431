import { Agent, request as ask, createServer, type IncomingMessage, type Server, type ServerResponse } from "node:http";
import type { AddressInfo } from "node:net";
import { pause } from "../waiting.ts";

/** What the line to the store does. `silent` never answers what came while it lasted, not even when it is over. */
export type LineFault =
  | "refuses"
  | "slow"
  | "silent"
  | "cuts what it is sent"
  | "shortens what it is sent"
  | "says yes, keeps nothing"
  | "cuts its answer"
  | "shortens its answer";

const readAll = async (from: IncomingMessage): Promise<Buffer> => {
  const blocks: Buffer[] = [];
  for await (const block of from) blocks.push(block as Buffer);
  return Buffer.concat(blocks);
};

const headersOf = (from: IncomingMessage): Record<string, string | string[]> =>
  Object.fromEntries(
    Object.entries(from.headers).flatMap(([name, value]) => (value === undefined || name === "connection" ? [] : [[name, value]])),
  );

/** Stands between the store and whoever asks it: passes everything on as it came, or breaks it. */
export class StoreBetween {
  /** Address of the store itself. */
  target = "";
  /** What breaks now, the newest last; that one counts. */
  readonly #faults = new Map<LineFault, { readonly share: number; hits: number }>();
  #server: Server | undefined;
  #port = 0;
  readonly #agent = new Agent({ keepAlive: true });

  get address(): string {
    return `http://127.0.0.1:${this.#port}`;
  }

  async open(): Promise<this> {
    const server = createServer((request, response) => void this.#pass(request, response).catch(() => response.destroy()));
    // longer than whoever asks keeps a connection, as the store itself
    server.keepAliveTimeout = 75_000;
    server.headersTimeout = 80_000;
    await new Promise<void>((resolve) => server.listen(0, "127.0.0.1", resolve));
    this.#server = server;
    this.#port = (server.address() as AddressInfo).port;
    return this;
  }

  async close(): Promise<void> {
    this.#agent.destroy();
    this.#server?.closeAllConnections();
    await new Promise<void>((resolve) => (this.#server === undefined ? resolve() : this.#server.close(() => resolve())));
  }

  /** `share`: how much of a body passes, how slow is slow. */
  begin(fault: LineFault, share: number): void {
    this.#faults.delete(fault);
    this.#faults.set(fault, { share, hits: 0 });
  }

  hits(fault: LineFault): number {
    return this.#faults.get(fault)?.hits ?? 0;
  }

  /** Breaks this no more, or nothing where none is named. */
  end(fault?: LineFault): void {
    if (fault === undefined) this.#faults.clear();
    else this.#faults.delete(fault);
  }

  async #pass(request: IncomingMessage, response: ServerResponse): Promise<void> {
    const [fault, now] = [...this.#faults].at(-1) ?? [undefined, { share: 1, hits: 0 }];
    const { share } = now;
    now.hits += 1;
    // one that does not even read makes whoever sends wait with the rest of the body
    if (fault === "silent" && share < 0.5) return;
    const body = await readAll(request);
    if (fault === "silent") return;
    if (fault === "refuses") {
      response.writeHead(503, { "content-type": "application/xml" });
      response.end("<Error><Code>SlowDown</Code><Message>Please reduce your request rate.</Message></Error>");
      return;
    }
    if (fault === "slow") await pause(200 + share * 800);
    if (fault === "says yes, keeps nothing" && request.method === "PUT") {
      response.writeHead(200, { etag: '"d41d8cd98f00b204e9800998ecf8427e"' });
      response.end();
      return;
    }
    if (fault === "cuts what it is sent") return this.#cutOff(request, response, body.subarray(0, Math.floor(body.length * share)));
    const sent = fault === "shortens what it is sent" ? body.subarray(0, Math.floor(body.length * share)) : body;
    const answer = await this.#asked(request, sent);
    const whole = await readAll(answer);
    if (fault === "slow") await pause(share * 400);
    this.#answered(response, answer, whole, fault, share);
  }

  #answered(response: ServerResponse, answer: IncomingMessage, whole: Buffer, fault: LineFault | undefined, share: number): void {
    const some = whole.subarray(0, Math.floor(whole.length * share));
    // nothing of an answer without a body can be cut off but all of it
    if (fault === "cuts its answer" && whole.length === 0) return void response.destroy();
    const shortened = fault === "shortens its answer" && whole.length > 0;
    response.writeHead(answer.statusCode ?? 502, { ...headersOf(answer), ...(shortened ? { "content-length": String(some.length) } : {}) });
    if (fault === "cuts its answer") response.write(some, () => response.destroy());
    else response.end(shortened ? some : whole);
  }

  #begun(request: IncomingMessage, length: number) {
    const { hostname, port } = new URL(this.target);
    // the host stays as it was signed
    const headers = {
      ...headersOf(request),
      ...(request.headers["content-length"] === undefined ? {} : { "content-length": String(length) }),
    };
    return ask({ hostname, port, method: request.method, path: request.url, headers, agent: this.#agent });
  }

  #asked(request: IncomingMessage, body: Buffer): Promise<IncomingMessage> {
    return new Promise((resolve, reject) => {
      const asking = this.#begun(request, body.length);
      asking.on("response", resolve).on("error", reject);
      asking.end(body);
    });
  }

  /** The store is told of the whole body and gets a part of it. */
  async #cutOff(request: IncomingMessage, response: ServerResponse, some: Buffer): Promise<void> {
    const asking = this.#begun(request, Number(request.headers["content-length"] ?? 0));
    asking.on("error", () => undefined);
    await new Promise<void>((resolve) => asking.write(some, () => resolve()));
    await pause(30);
    asking.destroy();
    response.destroy();
  }
}
