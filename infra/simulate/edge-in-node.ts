import { fileURLToPath, pathToFileURL } from "node:url";
import { migrate } from "../local/index.ts";
import { type CountedDatabase, countedDatabase, type DatabaseCall } from "./counted-database.ts";
import { standIns } from "./stand-ins.ts";
import { surroundings } from "./surroundings.ts";
import { kindOf, type Work } from "./work.ts";
import { workersStreams } from "./workers-streams.ts";

/** As much of the worker as the platform calls. */
export interface Worker {
  fetch(request: Request, environment: object, context: object): Promise<Response>;
  queue(batch: object, environment: object): Promise<void>;
  scheduled(event: object, environment: object): Promise<void>;
}

export interface EdgeInNode {
  /** Where the demo's clients find it. */
  readonly address: string;
  readonly operatorKey: string;
  /** Every request that was answered, in their order; whoever reads it may empty it. */
  readonly works: Work[];
  /** Where companies lie. The first database is the directory, and holds no company. */
  readonly home: CountedDatabase;
  /** Jobs of the company that is asked about from now on; noted with each work. */
  jobs: number;
  /** The edge's clock, milliseconds. */
  now: number;
  /** Hands the queue's messages to the worker, one batch after another, until none is left. */
  readPhotos(): Promise<void>;
  /** The worker's trigger of every minute. */
  sweep(): Promise<void>;
  stop(): void;
}

const ADDRESS = "http://edge.invalid";
const BATCH = 1;
const migrations = fileURLToPath(new URL("../migrations", import.meta.url));

/** The bundled worker as it is deployed. */
export const workerFrom = async (file: string): Promise<Worker> =>
  ((await import(pathToFileURL(file).href)) as { readonly default: Worker }).default;

/**
 * The real worker in this process, over SQLite in memory in place of two D1 databases, with stand-ins for store, media, print and queue.
 * One request at a time, so that whatever is asked meanwhile is that request's. While it runs, this process's `fetch` and clock are its.
 */
export async function edgeInNode(worker: Worker): Promise<EdgeInNode> {
  workersStreams();
  let calls: DatabaseCall[] = [];
  const note = (call: DatabaseCall): void => void calls.push(call);
  const [directory, home] = [countedDatabase("directory", note), countedDatabase("home", note)];
  for (const { d1 } of [directory, home]) await migrate(d1 as unknown as Parameters<typeof migrate>[0], migrations, "now");
  const around = standIns();
  const { environment, queue } = surroundings(ADDRESS, directory, home);
  const real = { fetch: globalThis.fetch, now: Date.now };

  /** Runs one invocation of the worker and notes what it asked. */
  async function counted<T>(
    kind: string,
    bytesIn: number,
    work: (later: Promise<unknown>[]) => Promise<{ value: T; status: number; bytesOut: number }>,
  ): Promise<T> {
    calls = [];
    queue.sent = 0;
    Object.assign(around.asked, { store: 0, storeReads: 0, media: 0, print: 0 });
    const began = process.threadCpuUsage();
    const later: Promise<unknown>[] = [];
    const { value, status, bytesOut } = await work(later);
    await Promise.allSettled(later);
    const { user, system } = process.threadCpuUsage(began);
    const own = calls;
    const inSqlite = own.reduce((sum, { milliseconds }) => sum + milliseconds, 0);
    const { store, storeReads, media, print } = around.asked;
    edge.works.push({
      kind,
      status,
      calls: own,
      processorMs: Math.max(0, (user + system) / 1000 - inSqlite),
      storeCalls: store,
      storeReads,
      mediaCalls: media,
      printCalls: print,
      queued: queue.sent,
      bytesIn,
      bytesOut,
      jobs: edge.jobs,
    });
    return value;
  }

  async function answered(request: Request): Promise<Response> {
    const { pathname } = new URL(request.url);
    const length = Number(request.headers.get("content-length") ?? 0);
    return counted(kindOf(request.method, pathname), length, async (later) => {
      const answer = await worker.fetch(request, environment, { waitUntil: (work: Promise<unknown>) => later.push(work) });
      const bytes = new Uint8Array(await answer.arrayBuffer());
      const whole = new Response(bytes.length === 0 ? null : bytes, { status: answer.status, headers: answer.headers });
      return { value: whole, status: answer.status, bytesOut: bytes.length };
    });
  }

  const edge: EdgeInNode = {
    address: ADDRESS,
    operatorKey: environment.OPERATOR_KEY,
    works: [],
    home,
    jobs: 0,
    now: Date.UTC(2026, 4, 12, 12),
    async readPhotos() {
      while (queue.waiting.length > 0) {
        const messages = queue.waiting.splice(0, BATCH).map((body) => ({ body, ack() {}, retry: () => queue.waiting.push(body) }));
        await counted("queue, photos read", 0, async () => {
          await worker.queue({ queue: "media", messages }, environment);
          return { value: undefined, status: 200, bytesOut: 0 };
        });
      }
    },
    sweep: () =>
      counted("every minute", 0, async () => {
        await worker.scheduled({}, environment);
        return { value: undefined, status: 200, bytesOut: 0 };
      }),
    stop() {
      globalThis.fetch = real.fetch;
      Date.now = real.now;
    },
  };

  Date.now = () => edge.now;
  globalThis.fetch = async (input, init) => {
    const body = (init as { body?: unknown } | undefined)?.body;
    const request = new Request(input as Request, body instanceof ReadableStream ? ({ ...init, duplex: "half" } as RequestInit) : init);
    if (body instanceof Uint8Array) request.headers.set("content-length", String(body.length));
    else if (typeof body === "string") request.headers.set("content-length", String(Buffer.byteLength(body)));
    const url = new URL(request.url);
    if (url.origin === ADDRESS) return answered(request);
    return around.answer(url, request);
  };
  return edge;
}
