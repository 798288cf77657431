import { statement } from "../adapters/statement.ts";
import { edgeOf } from "../edge.ts";
import type { Environment, PhotoHint } from "../environment.ts";
import { pause } from "../lanes.ts";
import { routes } from "../routes/index.ts";
import { type Broken, faultyDatabase } from "./faulty-database.ts";
import { queueFaults } from "./faulty-queue.ts";

// An entry of its own for the fault harness: the edge as deployed, with a database, a queue and a clock that break when they are told to.

/** What breaks from now on. */
export interface FaultOrders {
  /** Milliseconds that the edge's clock is ahead of the machine's. */
  readonly clock: number;
  /** Every so many calls of the database fail; 0: none. */
  readonly databaseEvery: number;
  readonly database: Broken;
  readonly queue: "as it comes" | "twice" | "out of order" | "lost";
}

const none: FaultOrders = { clock: 0, databaseEvery: 0, database: "before", queue: "as it comes" };
let orders = none;
/** What was broken since the last orders. */
let hits = 0;
let calls = 0;

const isNext = (): boolean => {
  if (orders.databaseEvery === 0) return false;
  calls += 1;
  if (calls % orders.databaseEvery !== 0) return false;
  hits += 1;
  return true;
};

const edge = edgeOf(routes, () => Date.now() + orders.clock);
const broken = (environment: Environment): Environment => ({
  ...environment,
  DB: faultyDatabase(environment.DB, () => (isNext() ? orders.database : undefined)),
});

/** A row of what is owed waits no longer than this for its next try, but for one that was laid aside. */
const LONGEST_PAUSE_MS = 3_900_000;
const HURRY = "UPDATE owed SET due = ?1 WHERE due <= ?2";

/** Takes new orders and says how much the old ones have broken. `hurry`: what is owed is due now. */
async function told(request: Request, { DB }: Environment): Promise<Response> {
  const before = hits;
  if (request.method === "GET") return Response.json({ hits: before });
  const { hurry = false, ...given } = (await request.json()) as Partial<FaultOrders> & { readonly hurry?: boolean };
  const now = Date.now();
  if (hurry) await statement(DB, HURRY, now, now + LONGEST_PAUSE_MS).run();
  orders = { ...none, ...given };
  hits = 0;
  calls = 0;
  return Response.json({ hits: before });
}

export default {
  fetch: (request, environment, context) =>
    new URL(request.url).pathname === "/faults-ordered" ? told(request, environment) : edge.fetch?.(request, broken(environment), context),

  async queue(batch, environment, context) {
    const deliver = async (one: MessageBatch<PhotoHint>) => edge.queue?.(one, broken(environment), context);
    if (orders.queue === "as it comes") return deliver(batch);
    hits += batch.messages.length;
    await queueFaults[orders.queue](batch, deliver, (work) => context.waitUntil(pause(400).then(work)));
  },

  async scheduled(event, environment, context) {
    const sweep = async () => edge.scheduled?.(event, broken(environment), context);
    await (orders.queue === "twice" ? Promise.all([sweep(), sweep()]) : sweep());
  },
} as ExportedHandler<Environment, PhotoHint>;
