import { createServer, type IncomingMessage, type Server, type ServerResponse } from "node:http";
import type { AddressInfo } from "node:net";

/** What is done with one request instead of passing it on: a status answered, the answer dropped after the edge gave it, or nothing. */
type Instead = number | "answer lost" | undefined;

const readAll = async (request: IncomingMessage): Promise<Buffer> => {
  const blocks: Buffer[] = [];
  for await (const block of request) blocks.push(block as Buffer);
  return Buffer.concat(blocks);
};

/** A weak signal: stands between phone and edge, loses what a test wants lost, and counts what the edge took. */
export class Between {
  /** Decides about each request. */
  instead: (request: { readonly method: string; readonly path: string }) => Instead = () => undefined;
  /** Added to the end of the app's worker: a newer app. */
  newerApp = "";
  /** How often the edge said of an entry, by its id, that it took it; of a photo, by its hash, that it stored it. */
  readonly entriesTaken = new Map<string, number>();
  readonly photosStored = new Map<string, number>();
  readonly #edge: string;
  #server: Server | undefined;
  #port = 0;

  constructor(edge: string) {
    this.#edge = edge;
  }

  get address(): string {
    return `http://127.0.0.1:${this.#port}`;
  }

  /** There is signal, on the same port as before. */
  async open(): Promise<this> {
    const server = createServer((request, response) => void this.#pass(request, response).catch(() => response.destroy()));
    await new Promise<void>((resolve) => server.listen(this.#port, "127.0.0.1", resolve));
    this.#port = (server.address() as AddressInfo).port;
    this.#server = server;
    return this;
  }

  /** There is none. */
  async close(): Promise<void> {
    const server = this.#server;
    this.#server = undefined;
    server?.closeAllConnections();
    await new Promise<void>((resolve) => (server === undefined ? resolve() : server.close(() => resolve())));
  }

  async #pass(request: IncomingMessage, response: ServerResponse): Promise<void> {
    const { method = "GET", url = "/" } = request;
    const body = await readAll(request);
    const instead = this.instead({ method, path: url });
    if (typeof instead === "number") {
      response.writeHead(instead, { "content-type": "text/plain" });
      response.end("trouble");
      return;
    }
    // asked for whole each time: what the edge calls unchanged may have been added to here
    const { host: _, connection: __, "content-length": ___, "if-none-match": ____, ...asked } = request.headers;
    const headers = Object.entries(asked).map(([name, value]): [string, string] => [name, String(value)]);
    const answer = await fetch(`${this.#edge}${url}`, {
      method,
      redirect: "manual",
      headers: headers.map(([name, value]) => (name === "origin" ? [name, this.#edge] : [name, value])),
      ...(body.length > 0 ? { body: new Uint8Array(body) } : {}),
    });
    const bytes = Buffer.from(await answer.arrayBuffer());
    this.#count(method, url, answer.status, bytes);
    if (instead === "answer lost") return void response.destroy();
    const given = [...answer.headers].filter(
      ([name]) => !["content-length", "content-encoding", "transfer-encoding", "etag"].includes(name),
    );
    for (const [name, value] of given) if (name !== "set-cookie") response.setHeader(name, value);
    const cookies = answer.headers.getSetCookie();
    if (cookies.length > 0) response.setHeader("set-cookie", cookies);
    response.writeHead(answer.status);
    response.end(url === "/sw.js" ? Buffer.concat([bytes, Buffer.from(this.newerApp)]) : bytes);
  }

  #count(method: string, url: string, status: number, bytes: Buffer): void {
    const photo = /^\/api\/photos\/([0-9a-f]{64})$/.exec(url)?.[1];
    if (method === "PUT" && photo !== undefined && status < 300) this.photosStored.set(photo, (this.photosStored.get(photo) ?? 0) + 1);
    if (method !== "POST" || !/^\/api\/jobs\/[^/]+\/entries$/.test(url) || status !== 200) return;
    for (const { id, outcome } of (JSON.parse(bytes.toString()) as { answers: { id: string; outcome?: string }[] }).answers)
      if (outcome === "taken") this.entriesTaken.set(id, (this.entriesTaken.get(id) ?? 0) + 1);
  }
}
