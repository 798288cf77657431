import { beforeAll, describe, expect, inject, it } from "vitest";
import type { Operation } from "#core/wire/index.ts";
import { batchOf, Client, type Company, newCompany, newId, newJob, Phone, type Reply } from "../helpers/edge.ts";

const roles = ["crew", "office", "company owner"] as const;
const clientOf = (company: Company, role: (typeof roles)[number]): Client =>
  role === "crew" ? company.crew : role === "office" ? company.office : company.owner;

// By variable names: the edge is written for another platform's types than the tests.
const [routerFile, routesFile] = ["#functions/edge/router.ts", "#functions/edge/routes/index.ts"];
const { routes } = (await import(routesFile)) as { routes: readonly Operation[] };
const { routerOf } = (await import(routerFile)) as {
  routerOf: (routes: readonly Operation[], clock: () => number) => { routes: { method: string; path: string }[] };
};

/** The list as the router itself has it. */
const router = routerOf(routes, () => 0);
const inRouter = router.routes.map(({ method, path }) => `${method} ${path}`);

describe("doors", () => {
  let ours: Company;
  let theirs: Company;
  let theirIds: Record<string, string>;
  beforeAll(async () => {
    ours = await newCompany(inject("edge"), inject("operatorKey"));
    theirs = await newCompany(inject("edge"), inject("operatorKey"));
    const { job, sheet } = await newJob(theirs);
    const photo = new Uint8Array([0xff, 0xd8, 0xff, 0xe0, ...crypto.getRandomValues(new Uint8Array(64))]);
    const { sha256 } = await import("../helpers/edge.ts");
    const stored = await theirs.crew.ask("PUT", `/api/photos/${sha256(photo)}`, { bytes: photo });
    expect(stored.status).toBe(201);
    const record = await theirs.office.post(`/api/jobs/${job}/records`, { edition: "company" });
    theirIds = {
      job,
      person: theirs.people.crew,
      sha256: sha256(photo),
      record: record.body?.record ?? newId(),
      digest: sheet,
      token: "none",
    };
  });

  /** Ids of the right form that nobody has. */
  const unknown = (name: string): string => (name === "sha256" || name === "digest" ? "0123456789abcdef".repeat(4) : newId());
  const filled = (path: string, ids: (name: string) => string): string => path.replaceAll(/:([a-z0-9]+)/g, (_, name: string) => ids(name));
  const bodyFor = (path: string, phone: Phone, job: string, person: string): Promise<unknown> | unknown => {
    if (path.endsWith("/entries")) return phone.entry(job, person, "note-for-record", { text: "t" }).then((entry) => batchOf(entry));
    if (path.endsWith("/records")) return { edition: "customer" };
    if (path.endsWith("/move"))
      return { to: newId(), entries: [{ id: "a", digest: "a".repeat(64) }], reason: "r", outEntry: {}, inEntry: {} };
    return {};
  };
  const same = (a: Reply, b: Reply): void => {
    expect(a.status).toBe(b.status);
    expect({ ...a.body, requestId: "" }).toEqual({ ...b.body, requestId: "" });
  };

  it("every route in the router states who may call it, and every stated route is in the router", () => {
    expect(inRouter.sort()).toEqual(routes.map(({ method, path }) => `${method} ${path}`).sort());
    for (const { who } of routes) expect(who.length).toBeGreaterThan(0);
    expect(inRouter.length).toBeGreaterThan(30);
  });

  it("the document that is served lists the same routes with the same callers", async () => {
    const { paths } = (await new Client(inject("edge")).get("/api/openapi.json")).body;
    const listed = Object.entries<Record<string, { "x-who": string[] }>>(paths).flatMap(([path, methods]) =>
      Object.entries(methods).map(
        ([method, about]) => `${method.toUpperCase()} ${path.replaceAll(/\{([a-z0-9]+)\}/g, ":$1")} ${about["x-who"]}`,
      ),
    );
    expect(listed.sort()).toEqual(routes.map(({ method, path, who }) => `${method} ${path} ${who}`).sort());
  });

  describe.each(routes.map((route) => ({ name: `${route.method} ${route.path}`, route })))("$name", ({ route }) => {
    const ask = async (client: Client, path: string, job = "x", person = "x") => {
      if (route.method === "GET") return client.get(path);
      if (route.takes === "bytes") return client.ask(route.method, path, { bytes: new Uint8Array([1]) });
      return client.ask(route.method, path, route.takes ? { json: await bodyFor(route.path, new Phone(), job, person) } : {});
    };

    it("nobody is let in, unless everybody is", async () => {
      const answer = await ask(new Client(inject("edge")), filled(route.path, unknown));
      if (route.who[0] === "nobody") expect([200, 303, 404]).toContain(answer.status);
      else expect(answer).toMatchObject({ status: 401, body: { code: "session-missing" } });
    });

    it("a session that was made up is nobody", async () => {
      if (route.who[0] === "nobody" || route.who[0] === "operator") return;
      const client = new Client(inject("edge"));
      client.cookie = `session=${"A".repeat(43)}`;
      expect((await ask(client, filled(route.path, unknown))).status).toBe(401);
    });

    it("roles that may not are told so, whatever they ask for; their own company or another", async () => {
      if (route.who[0] === "nobody") return;
      for (const role of roles) {
        if ((route.who as readonly string[]).includes(role)) continue;
        for (const ids of [unknown, (name: string) => theirIds[name] ?? ""]) {
          const answer = await ask(clientOf(ours, role), filled(route.path, ids));
          expect([401, 403]).toContain(answer.status);
        }
      }
    });

    it("another company's ids answer exactly as ids that nobody has", async () => {
      if (!route.path.includes(":") || route.who[0] === "nobody" || route.takes === "bytes") return;
      for (const role of roles) {
        if (!(route.who as readonly string[]).includes(role)) continue;
        const client = clientOf(ours, role);
        const person = role === "crew" ? ours.people.crew : role === "office" ? ours.people.office : ours.people.owner;
        const foreign = await ask(
          client,
          filled(route.path, (name) => theirIds[name] ?? ""),
          theirIds.job,
          person,
        );
        const none = await ask(client, filled(route.path, unknown), newId(), person);
        expect([404, 409]).toContain(foreign.status);
        same(foreign, none);
      }
    });

    it("changes nothing without the header that a foreign page cannot set, or from another origin", async () => {
      if (route.method === "GET" || route.who[0] === "operator") return;
      const role = route.who[0] as (typeof roles)[number];
      const path = filled(route.path, unknown);
      const client = clientOf(ours, role);
      const without = await client.ask(route.method, path, { json: {}, headers: { "x-asburied": "0" } });
      const foreign = await client.ask(route.method, path, { json: {}, headers: { origin: "https://elsewhere.example" } });
      expect(without).toMatchObject({ status: 403, body: { code: "request-origin" } });
      expect(foreign).toMatchObject({ status: 403, body: { code: "request-origin" } });
    });
  });

  it("a photo stored by another company is not there for us, and storing our own does not show theirs", async () => {
    const path = `/api/photos/${theirIds.sha256}`;
    expect((await ours.crew.get(path)).status).toBe(404);
    expect((await ours.office.get(`${path}/original`)).status).toBe(404);
    expect((await theirs.office.get(`${path}/original`)).status).toBe(200);
    expect((await theirs.crew.get(`${path}/original`)).status).toBe(403);
  });

  it("an address that is none is told as such, and answers carry the guarding headers", async () => {
    const answer = await new Client(inject("edge")).get("/api/nothing-here");
    expect(answer).toMatchObject({ status: 404, body: { code: "route-unknown" } });
    expect(answer.headers.get("content-security-policy")).toContain("default-src 'self'");
    expect(answer.headers.get("x-content-type-options")).toBe("nosniff");
    expect(answer.headers.get("referrer-policy")).toBe("no-referrer");
    expect(answer.headers.get("cache-control")).toBe("no-store");
    expect(answer.headers.get("content-type")).toBe("application/problem+json");
  });
});
