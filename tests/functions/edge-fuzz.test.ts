import fc from "fast-check";
import { beforeAll, expect, inject, it } from "vitest";
import { type FactKind, factKinds } from "#core/job/index.ts";
import type { Json } from "#core/ledger/index.ts";
import { type Operation, whats } from "#core/wire/index.ts";
import { damagedValue, hostileSigns } from "../helpers/damage.ts";
import { batchOf, Client, type Company, type Loose, newCompany, newJob, type Phone, sha256, tenItems } from "../helpers/edge.ts";
import { type Pools, valuesOf } from "../helpers/from-schema.ts";
import { RUNS, SEED } from "../helpers/fuzz.ts";
import { type HostileRequest, hostileRequests } from "../helpers/hostile-requests.ts";

// FUZZ_RUNS=100000 npx vitest run --project functions tests/functions/edge-fuzz.test.ts: the long form; `npm run long` has it too.

/** Of one request, while several are on their way and the machine does other work. */
const LONGEST_MS = 15_000;
const AT_ONCE = 8;
/** Requests about one job, then about another: a hundred thousand would make it larger than any job is, and its archive a matter of its size. */
const OF_ONE_JOB = 5_000;
/** What an installation without mail or passkeys says of itself; anything else of 5xx is a fault. */
const OF_THE_INSTALLATION: ReadonlySet<string> = new Set(["passkeys-not-set", "mail-not-set", "mail-not-sent"]);
const roles = ["crew", "office", "company owner"] as const;

// By a variable name: the edge is written for another platform's types than the tests.
const routesFile = "#functions/edge/routes/index.ts";
const { routes } = (await import(routesFile)) as { routes: readonly Operation[] };
/** Each print is seconds of a browser: asked for a few times, and otherwise refused before it comes to that. */
const prints = ({ path, method }: Operation): boolean =>
  (method === "POST" && path.endsWith("/records")) || /^\/api\/jobs\/:job\/(design|cards)\/pdf$/.test(path) || path === "/api/report";
/** These end what the fuzz itself stands on. */
const ends = ({ path, method }: Operation): boolean => method === "DELETE" || /\/(sessions|recovery|erasure|end|withdraw)\b/.test(path);

let company: Company;
let job: string;
let phone: Phone;
let ids: Record<string, readonly string[]>;
beforeAll(async () => {
  company = await newCompany(inject("edge"), inject("operatorKey"));
}, 60_000);

/** A job of the company with one of everything that a route names. */
async function beginJob(): Promise<void> {
  const opened = await newJob(company);
  ({ job, phone } = opened);
  const photo = new Uint8Array([0xff, 0xd8, 0xff, 0xe0, ...crypto.getRandomValues(new Uint8Array(64))]);
  expect((await company.crew.ask("PUT", `/api/photos/${sha256(photo)}`, { bytes: photo })).status).toBe(201);
  const taken = await phone.entry(job, company.people.crew, "picture-taken", {
    item: "footing-seen",
    photo: sha256(photo),
    bytes: photo.length,
    type: "image/jpeg",
  });
  const sent = await company.crew.post(`/api/jobs/${job}/entries`, batchOf(taken));
  const record = await company.office.post(`/api/jobs/${job}/records`, { edition: "company" });
  expect(record.status).toBe(201);
  const released = await company.office.post(`/api/records/${record.body.record}/releases`, { to: "the house" });
  const link = await company.office.post(`/api/jobs/${job}/others-links`, { step: "top-of-footing", what: "A paper" });
  ids = {
    job: [job],
    person: Object.values(company.people),
    sha256: [sha256(photo)],
    photo: [sha256(photo)],
    record: [record.body.record],
    digest: [opened.sheet],
    name: ["gate-post", "settings"],
    token: [
      String(released.body?.link ?? "")
        .split("/")
        .at(-1) ?? "",
      String(link.body?.link ?? "")
        .split("/")
        .at(-1) ?? "",
    ],
    entry: [String(sent.body.answers[0].id)],
    company: [company.company],
    question: (await company.owner.get("/api/questions")).body.questions.map(({ id }: Loose) => String(id)),
  };
}

const idsOf = (list: string): readonly string[] => ((tenItems as Loose)[list] as readonly { id: string }[]).map(({ id }) => id);
const known = (): Pools => ({
  texts: [...Object.values(ids).flat(), "2026-06-10", "23 3/8", "in", "UTC", "a".repeat(64), "office@example.org", ...hostileSigns],
  named: {
    item: idsOf("items"),
    check: idsOf("checks"),
    step: idsOf("steps"),
    covering: idsOf("coverings"),
    photo: ids.photo ?? [],
    sheet: ["gate-post"],
    zone: ["America/New_York", "Nowhere/At_All"],
    kind: factKinds,
  },
});

/** An entry as a phone seals it, that says whatever the shape of its kind allows. */
const entries = (): fc.Arbitrary<{ readonly kind: string; readonly what: unknown }> => {
  const whole = fc.oneof(
    ...factKinds.map((kind: FactKind) => valuesOf(whats[kind], known()).map((what) => ({ kind: kind as string, what }))),
  );
  return fc.oneof(
    whole,
    whole.chain(({ kind, what }) => damagedValue([what], 2).map((spoilt) => ({ kind, what: spoilt }))),
  );
};

/** Words that a sentence says where a value was missing, and that did not come with the request: what was sent is named as it was. */
function slips(detail: string, { path }: HostileRequest, bytes: Uint8Array | undefined): readonly string[] {
  const sent = `${path.replaceAll("%5B", "[")} ${bytes === undefined ? "" : Buffer.from(bytes).toString("utf8")}`;
  return (detail.match(/undefined|NaN|\[object/g) ?? []).filter((word) => !sent.includes(word));
}

interface Trial extends HostileRequest {
  readonly says: readonly { readonly kind: string; readonly what: unknown }[];
}

async function bodyOf({ route, body, says }: Trial): Promise<Uint8Array<ArrayBuffer> | undefined> {
  if (!route.path.endsWith("/jobs/:job/entries") || route.method !== "POST" || says.length === 0) return body;
  const sealed: unknown[] = [];
  // what has no canonical form no phone can seal
  for (const { kind, what } of says)
    await phone.entry(job, company.people.crew, kind, what as Json).then(
      (one) => sealed.push(one),
      () => {},
    );
  return Uint8Array.from(Buffer.from(JSON.stringify(batchOf(...sealed))));
}

it(
  `${RUNS} requests over every route: none breaks the edge, none hangs, each refusal has its code`,
  async () => {
    const working = routes.filter(({ path }) => path !== "/api/metrics");
    const trials = () =>
      fc.record({
        request: hostileRequests(working, ids, known(), ends),
        says: fc.array(entries(), { maxLength: 3 }),
        print: fc.nat(40),
      });
    const clients: Record<string, Client> = { crew: company.crew, office: company.office, "company owner": company.owner };
    const counts = new Map<string, number>();
    const asked = new Set<string>();
    const faults: unknown[] = [];
    let [longest, count] = [0, 0];

    const one = async (trial: Trial): Promise<void> => {
      const { route, path, headers, role } = trial;
      count += 1;
      const bytes = await bodyOf(trial);
      const isStranger = route.who[0] === "nobody" || route.who[0] === "operator" || (ends(route) && !route.path.includes(":"));
      const client = isStranger ? new Client(inject("edge")) : (clients[route.who[role % route.who.length] ?? "office"] ?? company.office);
      const own = {
        ...headers,
        "cf-connecting-ip": `10.${count >> 16}.${(count >> 8) & 255}.${count & 255}`,
        ...(route.who[0] === "operator" ? { authorization: `Operator ${inject("operatorKey")}` } : {}),
      };
      const before = performance.now();
      const answer = await client
        .ask(route.method, path, { headers: own, ...(bytes === undefined ? {} : { bytes }) })
        .catch((thrown: Error) => thrown);
      const took = performance.now() - before;
      longest = Math.max(longest, took);
      asked.add(`${route.method} ${route.path}`);
      const told = {
        route: `${route.method} ${route.path}`,
        path: path.slice(0, 300),
        body: bytes && Buffer.from(bytes).toString("utf8").slice(0, 2_000),
        took: Math.round(took),
      };
      if (answer instanceof Error) return void faults.push({ ...told, thrown: answer.message });
      const { status, body } = answer;
      counts.set(`${status}`, (counts.get(`${status}`) ?? 0) + 1);
      const isPage = answer.headers.get("content-type")?.startsWith("text/html") === true;
      const isCoded = typeof body?.code === "string" && typeof body?.detail === "string" && slips(body.detail, trial, bytes).length === 0;
      const isRefusal = status >= 400;
      if (status >= 500 && !OF_THE_INSTALLATION.has(body?.code)) faults.push({ ...told, status, answered: body });
      else if (isRefusal && !isPage && !isCoded)
        faults.push({ ...told, status, answered: body ?? Buffer.from(answer.bytes).toString("utf8").slice(0, 300) });
      else if (took > LONGEST_MS) faults.push({ ...told, status });
    };

    for (let from = 0; from < RUNS; from += OF_ONE_JOB) {
      await beginJob();
      const waiting = fc
        .sample(trials(), { numRuns: Math.min(OF_ONE_JOB, RUNS - from), seed: SEED + from })
        .map(({ request, says, print }): Trial => ({ ...request, says, role: request.role + print }))
        .filter(({ route, role }) => !prints(route) || role % 40 === 0);
      await Promise.all(
        Array.from({ length: AT_ONCE }, async () => {
          for (let next = waiting.shift(); next !== undefined; next = waiting.shift()) await one(next);
        }),
      );
    }
    const told = [...counts].sort().map(([status, times]) => `${status}: ${times}`);
    console.info(
      `fuzz: ${count} requests, seed ${SEED}, ${asked.size} of ${working.length} routes, ${told.join(", ")}, longest ${Math.round(longest)} ms`,
    );
    expect(faults.slice(0, 10)).toEqual([]);
    // both kinds were reached, and nobody was signed out on the way
    expect(counts.get("200") ?? 0).toBeGreaterThan(count * 0.05);
    expect(counts.get("401") ?? 0).toBeLessThan(count * 0.1);
    expect(asked.size).toBeGreaterThan(working.length * 0.95);
    for (const role of roles) expect((await clients[role]?.get("/api/session"))?.status, role).toBe(200);
    // what stands in the ledger after all of it is still a job
    expect((await company.office.get(`/api/jobs/${job}`)).status).toBe(200);
  },
  90_000 + RUNS * 60,
);
