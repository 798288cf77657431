import { execFile } from "node:child_process";
import { promisify } from "node:util";
import type { ProcessName, Stack } from "#infra/local/index.ts";
import { pause } from "../waiting.ts";
import type { Fault, FaultName } from "./draws.ts";
import type { SimulatedPhone } from "./phone.ts";
import type { LineFault, StoreBetween } from "./store-between.ts";

/** What a fault has come to: in words, and how many requests, messages or calls it broke (1 for a process). */
export interface Broke {
  readonly name: FaultName;
  readonly words: string;
  readonly hits: number;
}

const HOUR_MS = 3_600_000;
const run = promisify(execFile);

/** Limits the size of every file that a process writes, in bytes, as a full disk does; false where it cannot be done here. */
async function limitFiles(pid: number | undefined, bytes: number | "unlimited"): Promise<boolean> {
  if (pid === undefined) return false;
  try {
    await run("prlimit", ["--pid", String(pid), `--fsize=${bytes}:`]);
    return true;
  } catch {
    return false;
  }
}

export class Breaking {
  readonly #stack: Stack;
  readonly #between: StoreBetween;
  readonly #phones: readonly SimulatedPhone[];
  /** Of each fault of the edge in this round, what it orders: two of them may be there at once. */
  #orders: Record<string, unknown> = {};

  constructor(stack: Stack, between: StoreBetween, phones: readonly SimulatedPhone[]) {
    this.#stack = stack;
    this.#between = between;
    this.#phones = phones;
  }

  /** Waits for the fault's moment, breaks it, lets it last, mends it. */
  async run(fault: Fault): Promise<Broke> {
    await pause(fault.at);
    const { hits, words } = await this.#broken(fault);
    return { name: fault.name, hits, words: `${fault.name} at ${seconds(fault.at)} s${words}` };
  }

  /** Takes every order back; throws where the edge does not take it. */
  async clear(): Promise<void> {
    this.#orders = {};
    this.#between.end();
    for (const phone of this.#phones) phone.ground.clockAhead = 0;
    if ((await this.#order()) === undefined) throw new Error("the edge does not take the orders back");
  }

  /** Work that is owed and due within its longest pause is due now: the pauses between tries are left out, the tries are not. */
  async hurry(): Promise<void> {
    await this.#asked({ hurry: true });
  }

  async #broken({ name, lasts, share }: Fault): Promise<{ readonly words: string; readonly hits: number }> {
    const [what, ...rest] = name.split(" ");
    const target = rest.join(" ");
    if (what === "kill") return this.#killed(target as ProcessName);
    if (what === "freeze") return this.#frozen(target as ProcessName, lasts);
    if (what === "disk") return this.#full(name.endsWith("store") ? "store" : "workerd", lasts, share);
    if (what === "store") return this.#onTheLine(target as LineFault, lasts, share);
    if (what === "phones'") return this.#phonesJumped(lasts, share);
    return this.#ordered(name, lasts, share);
  }

  #pid(name: ProcessName): number | undefined {
    return this.#stack.processes.find((one) => one.name === name)?.pid;
  }

  async #killed(name: ProcessName) {
    const pid = this.#pid(name);
    if (pid === undefined || !this.#stack.kill(name)) return { hits: 0, words: ", which was down already" };
    return { hits: 1, words: "" };
  }

  async #frozen(name: ProcessName, lasts: number) {
    const pid = this.#pid(name);
    if (pid === undefined || !this.#stack.kill(name, "SIGSTOP")) return { hits: 0, words: ", which was down" };
    await pause(lasts);
    try {
      process.kill(pid, "SIGCONT");
    } catch {
      // killed meanwhile by the round's other fault
    }
    return { hits: 1, words: ` for ${seconds(lasts)} s` };
  }

  async #full(name: "store" | "workerd", lasts: number, share: number) {
    const pid = this.#pid(name);
    // whole pages of a database are written before it is full
    const bytes = name === "store" ? Math.floor(share * 12_000) : Math.floor(share * 40) * 4_096;
    if (!(await limitFiles(pid, bytes))) return { hits: 0, words: pid === undefined ? ", which was down" : ", not tried: no prlimit here" };
    await pause(lasts);
    await limitFiles(pid, "unlimited");
    return { hits: 1, words: ` for ${seconds(lasts)} s, files end at ${bytes} bytes` };
  }

  async #onTheLine(fault: LineFault, lasts: number, share: number) {
    this.#between.begin(fault, share);
    await pause(lasts);
    await untilHit(async () => this.#between.hits(fault));
    const hits = this.#between.hits(fault);
    this.#between.end(fault);
    return { hits, words: ` for ${seconds(lasts)} s: ${hits} requests` };
  }

  async #phonesJumped(lasts: number, share: number) {
    const some = this.#phones.slice(0, Math.ceil(this.#phones.length / 3));
    const ahead = Math.round((share - 0.5) * 20 * 24 * HOUR_MS);
    for (const phone of some) phone.ground.clockAhead = ahead;
    await pause(lasts);
    return { hits: some.length, words: `: ${some.length} by ${(ahead / HOUR_MS).toFixed(0)} h` };
  }

  async #ordered(name: FaultName, lasts: number, share: number) {
    // ahead by more than the longest pause between two tries, and by less than an office's session lasts without use
    const hours = share < 0.5 ? -1 - share * 10 : 0.5 + share * 3;
    const orders: Readonly<Record<string, object>> = {
      "queue twice": { queue: "twice" },
      "queue out of order": { queue: "out of order" },
      "queue lost": { queue: "lost" },
      "database fails before": { database: "before", databaseEvery: 2 + Math.floor(share * 6) },
      "database fails in the middle": { database: "middle", databaseEvery: 2 + Math.floor(share * 6) },
      "database loses its answer": { database: "answer lost", databaseEvery: 2 + Math.floor(share * 6) },
      "edge's clock jumps": { clock: Math.round(hours * HOUR_MS) },
    };
    const mine = orders[name] ?? {};
    this.#orders = { ...this.#orders, ...mine };
    const taken = await this.#order();
    await pause(lasts);
    if (name.startsWith("queue")) await untilHit(() => this.#asked(undefined));
    for (const key of Object.keys(mine)) delete this.#orders[key];
    const hits = await this.#order();
    const clock = name === "edge's clock jumps";
    if (taken === undefined) return { hits: 0, words: ", but the edge was down" };
    return {
      hits: clock ? 1 : (hits ?? 0),
      words: ` for ${seconds(lasts)} s${clock ? ` by ${hours.toFixed(1)} h` : hits === undefined ? ", ended with the edge" : `: ${hits} times`}`,
    };
  }

  /** Gives the edge its orders; how much the ones before have broken, or nothing where it is down. */
  #order(): Promise<number | undefined> {
    return this.#asked(this.#orders);
  }

  async #asked(orders: object | undefined): Promise<number | undefined> {
    try {
      const given = orders === undefined ? { method: "GET" } : { method: "POST", body: JSON.stringify(orders) };
      const init = { ...given, headers: { connection: "close" }, signal: AbortSignal.timeout(3_000) };
      const answer = await fetch(`${this.#stack.edge}/faults-ordered`, init);
      return answer.ok ? ((await answer.json()) as { hits: number }).hits : undefined;
    } catch {
      return undefined;
    }
  }
}

/** What hits only what happens to come by lasts until something came, within this. */
const HIT_LIMIT_MS = 1_500;

async function untilHit(hits: () => Promise<number | undefined>): Promise<void> {
  for (let waited = 0; waited < HIT_LIMIT_MS && (await hits()) === 0; waited += 50) await pause(50);
}

const seconds = (milliseconds: number): string => (milliseconds / 1000).toFixed(1);
