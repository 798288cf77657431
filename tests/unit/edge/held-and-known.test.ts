import { expect, it } from "vitest";
import { genesis } from "#core/ledger/index.ts";

// By variable names: the edge is written for another platform's types than the tests.
const [heldFile, knownFile, blocksFile] = ["jobs/held.ts", "access/known-sessions.ts", "photos/blocks.ts"].map(
  (file) => `#functions/edge/${file}`,
);
const { HeldJobs } = (await import(heldFile as string)) as {
  HeldJobs: new () => { get: (place: object) => unknown; put: (place: object, job: object) => void };
};
const { KnownSessions } = (await import(knownFile as string)) as {
  KnownSessions: new () => { get: (token: string, now: number) => unknown; put: (session: object, now: number) => void };
};
const { Blocks } = (await import(blocksFile as string)) as {
  Blocks: new (body: unknown) => { next: () => Promise<Uint8Array | undefined>; readonly broken: boolean };
};

const admissionFile = "#functions/edge/jobs/admission.ts";
const { admissionTo } = (await import(admissionFile)) as {
  admissionTo: (services: object, place: object, coming: []) => () => { after: object; admission: (since: []) => Promise<unknown> };
};

it("a job that is not held is judged on the rows that came with its head, and on no others", async () => {
  // to read the ledger by itself would be no function here, and throw
  const services = { held: { get: () => undefined, put: () => {}, drop: () => {} }, ledgers: { versions: async () => [] } };
  const { after, admission } = admissionTo(services, { company: "kettle", job: "one" }, [])();
  expect(after).toEqual(genesis);
  expect(await admission([])).toBeTypeOf("function");
});

const job = (entries: number): object => ({ stored: Array(entries).fill({}) });

it("a job without entries is not held: it would weigh nothing and never go", () => {
  const held = new HeldJobs();
  const place = { company: "kettle", job: "one" };
  held.put(place, job(3));
  expect(held.get(place)).toBeDefined();
  held.put(place, job(0));
  expect(held.get(place)).toBeUndefined();
});

it("jobs that were asked for longest ago go first when eight thousand entries are held", () => {
  const held = new HeldJobs();
  const at = (n: number) => ({ company: "kettle", job: String(n) });
  for (const n of [1, 2, 3, 4]) held.put(at(n), job(2_000));
  held.get(at(1));
  held.put(at(5), job(2_000));
  expect([1, 2, 3, 4, 5].map((n) => held.get(at(n)) !== undefined)).toEqual([true, false, true, true, true]);
});

it("a session is known for a minute, and what is over is let go", () => {
  const known = new KnownSessions();
  const session = { token: "one" };
  known.put(session, 0);
  expect(known.get("one", 59_999)).toBe(session);
  expect(known.get("one", 60_000)).toBeUndefined();
  known.put({ token: "two" }, 60_000);
  // asked about the time before: it is not there any more
  expect(known.get("one", 0)).toBeUndefined();
  expect(known.get("two", 60_000)).toBeDefined();
});

it("of many sessions the two thousand that were told last are known", () => {
  const known = new KnownSessions();
  for (let n = 0; n < 2_001; n += 1) known.put({ token: String(n) }, 0);
  expect(["0", "1", "2000"].map((token) => known.get(token, 0) !== undefined)).toEqual([false, true, true]);
});

it("a block that is asked for while the one before is still coming waits for it, as workerd allows one read at a time", async () => {
  let [waiting, given] = [false, 0];
  const reader = {
    async readAtLeast() {
      if (waiting) throw new TypeError("This ReadableStream only supports a single pending read request at a time.");
      waiting = true;
      await new Promise((resolve) => setTimeout(resolve, 10));
      waiting = false;
      given += 1;
      return given > 2 ? { done: true, value: undefined } : { done: false, value: Uint8Array.of(given) };
    },
    cancel: async () => {},
  };
  const blocks = new Blocks({ getReader: () => reader });
  expect(await Promise.all([blocks.next(), blocks.next(), blocks.next()])).toEqual([Uint8Array.of(1), Uint8Array.of(2), undefined]);
  expect(blocks.broken).toBe(false);
});
