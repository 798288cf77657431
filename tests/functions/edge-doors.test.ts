import { beforeAll, describe, expect, inject, it } from "vitest";
import type { Operation } from "#core/wire/index.ts";
import { Authenticator } from "../helpers/authenticator.ts";
import { tried } from "../helpers/doors.ts";
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
    const theirRequest = newId();
    const asked = { id: theirRequest, asks: "data", names: ["Nobody Nowhere"], day: "2026-05-04" };
    expect((await theirs.office.post("/api/persons", asked)).status).toBe(201);
    const { options, origin } = (await theirs.office.post("/api/passkeys/options")).body;
    const credential = new Authenticator().make({ origin, party: options.rp.id, challenge: options.challenge });
    const passkey = (await theirs.office.post("/api/passkeys", { name: "n", credential })).body.passkey;
    const { code } = (await theirs.office.post(`/api/people/${theirs.people.crew}/codes`, {})).body;
    const [{ session }] = (await theirs.crew.get("/api/access")).body.sessions;
    expect([typeof passkey, typeof code, typeof session]).toEqual(["string", "string", "string"]);
    theirIds = {
      job,
      company: theirs.company,
      passkey,
      code,
      session,
      person: theirs.people.crew,
      sha256: sha256(photo),
      record: record.body?.record ?? newId(),
      digest: sheet,
      name: "gate-post",
      token: "none",
      link: "none",
      release: "none",
      question: "none",
      request: theirRequest,
    };
  });

  /** Ids of the right form that nobody has. */
  const unknown = (name: string): string => (name === "sha256" || name === "digest" ? "0123456789abcdef".repeat(4) : newId());
  const filled = (path: string, ids: (name: string) => string): string => path.replaceAll(/:([a-z0-9]+)/g, (_, name: string) => ids(name));
  const bodyFor = (path: string, phone: Phone, job: string, person: string): Promise<unknown> | unknown => {
    if (path === "/api/join") return { digits: "0000 0000 0000" };
    if (path === "/api/sign-in")
      return { credential: { id: "AAAA", rawId: "AAAA", type: "public-key", response: {}, clientExtensionResults: {} } };
    if (path === "/api/persons") return { id: newId(), asks: "data", names: ["Nobody Nowhere"], day: "2026-05-04" };
    if (path.endsWith("/hold")) return { because: "dispute", until: "2026-05-04" };
    if (path.endsWith("/entries")) return phone.entry(job, person, "note-for-record", { text: "t" }).then((entry) => batchOf(entry));
    if (path.endsWith("/records")) return { edition: "customer" };
    if (path.endsWith("/releases")) return { to: "t" };
    if (path.endsWith("/messages")) return { kind: "warranty", to: { address: "t@example.org" }, language: "en" };
    if (path.endsWith("/move"))
      return { to: newId(), entries: [{ id: "a", digest: "a".repeat(64) }], reason: "r", outEntry: {}, inEntry: {} };
    if (path.endsWith("/versions")) return { digest: unknown("digest") };
    if (path.endsWith("/looks")) return { picture: newId(), says: "cannot tell" };
    if (path.endsWith("/moves")) return { to: newId(), entries: ["a"], reason: "r" };
    if (path.endsWith("/decisions")) return { kind: "rework-asked", what: { about: { item: "gate-swings" }, reason: "r" } };
    if (path.endsWith("/others-links")) return { step: "top-of-footing", what: "w" };
    if (path.startsWith("/api/others/")) return { name: "n", did: "d" };
    if (path.endsWith("/received")) return { item: "footing-seen", photo: unknown("sha256"), from: "f", how: "h", when: "w" };
    if (path.endsWith("/site")) return { latitude: 1, longitude: 1, how: "h" };
    if (path.endsWith("/afterwards")) return { kind: "in-use", what: { since: "2026-05-04", how: "h" } };
    if (path.endsWith("/particulars")) return { title: "t" };
    if (path.endsWith("/blurred")) return { regions: [{ x: 0, y: 0, width: 1, height: 1 }], reason: "r" };
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

  const ask = async (route: Operation, client: Client, path: string, job = "x", person = "x") => {
    if (route.method === "GET") return client.get(path);
    if (route.takes === "bytes") return client.ask(route.method, path, { bytes: new Uint8Array([1]) });
    return client.ask(route.method, path, route.takes ? { json: await bodyFor(route.path, new Phone(), job, person) } : {});
  };
  /** A session of its own for each call: some of them end the one that they are called with. */
  const signedIn = async (role: (typeof roles)[number]): Promise<Client> => {
    const person = role === "crew" ? ours.people.crew : role === "office" ? ours.people.office : ours.people.owner;
    const { link } = (await ours.owner.post(`/api/people/${person}/links`)).body;
    return new Client(inject("edge")).signIn(link);
  };
  const everybody = ({ who }: Operation): boolean => who[0] === "nobody";
  const operators = ({ who }: Operation): boolean => who[0] === "operator";
  const may = (route: Operation, role: (typeof roles)[number]): boolean => (route.who as readonly string[]).includes(role);
  /** A list of its own for each case, so that no case passes because it had nothing to do. */
  const those = (wanted: (route: Operation) => boolean) =>
    routes.filter(wanted).map((route) => ({ name: `${route.method} ${route.path}`, route }));

  it("the lists below hold every route that they are about", () => {
    const signedIn = routes.filter((route) => !everybody(route) && !operators(route));
    expect([those(everybody).length, those(operators).length]).toEqual([14, 4]);
    expect(signedIn.length).toBe(routes.length - 18);
    for (const route of signedIn) for (const who of route.who) expect(roles).toContain(who);
  });

  it.for(those(everybody))("$name lets everybody in", async ({ route }, { task }) => {
    const answer = await ask(route, new Client(inject("edge")), filled(route.path, unknown));
    tried(task, route, "nobody", answer);
    expect([200, 303, 404]).toContain(answer.status);
  });

  it.for(those((route) => !everybody(route)))("$name lets nobody in who is not signed in", async ({ route }, { task }) => {
    const answer = await ask(route, new Client(inject("edge")), filled(route.path, unknown));
    tried(task, route, "nobody", answer);
    expect(answer).toMatchObject({ status: 401, body: { code: "session-missing" } });
  });

  it.for(those((route) => !everybody(route)))("$name: a session that was made up is nobody", async ({ route }, { task }) => {
    const client = new Client(inject("edge"));
    client.cookie = `session=${"A".repeat(43)}`;
    const answer = await ask(route, client, filled(route.path, unknown));
    tried(task, route, "made-up session", answer);
    expect(answer).toMatchObject({ status: 401, body: { code: "session-missing" } });
  });

  /** Whatever is refused behind the door is refused for another reason than who asks. */
  const passed = those((route) => !everybody(route) && !operators(route)).flatMap((one) =>
    roles.filter((role) => may(one.route, role)).map((role) => ({ ...one, role })),
  );
  it.for(passed)("$name lets the $role in", async ({ route, role }, { task }) => {
    // A company of its own for what ends a session or changes everything, so that no case is refused because of the one before.
    const fresh = await signedIn(role);
    const answer = await ask(route, fresh, filled(route.path, unknown), newId(), ours.people.crew);
    tried(task, route, role, answer);
    expect([401, 403]).not.toContain(answer.status);
    expect(answer.status).toBeLessThan(500);
  });

  const refused = those((route) => !everybody(route)).flatMap((one) =>
    roles.filter((role) => !may(one.route, role)).map((role) => ({ ...one, role })),
  );
  it.for(refused)("$name tells the $role that it is not for them, whosever ids they name", async ({ route, role }, { task }) => {
    for (const ids of [unknown, (name: string) => theirIds[name] ?? ""]) {
      const answer = await ask(route, clientOf(ours, role), filled(route.path, ids));
      tried(task, route, role, answer);
      expect(answer).toMatchObject(
        operators(route) ? { status: 401, body: { code: "session-missing" } } : { status: 403, body: { code: "role-not-allowed" } },
      );
    }
  });

  const named = those((route) => route.path.includes(":") && !everybody(route) && route.takes !== "bytes").flatMap((one) =>
    roles.filter((role) => may(one.route, role)).map((role) => ({ ...one, role })),
  );
  it.for(named)(
    "$name answers the $role for another company's ids exactly as for ids that nobody has",
    async ({ route, role }, { task }) => {
      const client = clientOf(ours, role);
      const person = role === "crew" ? ours.people.crew : role === "office" ? ours.people.office : ours.people.owner;
      const path = filled(route.path, (name) => theirIds[name] ?? "");
      const foreign = await ask(route, client, path, theirIds.job, person);
      const none = await ask(route, client, filled(route.path, unknown), newId(), person);
      tried(task, route, "another company's", foreign);
      expect(foreign.status).toBe(404);
      same(foreign, none);
    },
  );

  it.for(those((route) => route.method !== "GET" && !operators(route)))(
    "$name changes nothing without the header that a foreign page cannot set, or from another origin",
    async ({ route }, { task }) => {
      const path = filled(route.path, unknown);
      const client = clientOf(ours, route.who[0] as (typeof roles)[number]);
      const without = await client.ask(route.method, path, { json: {}, headers: { "x-asburied": "0" } });
      const foreign = await client.ask(route.method, path, { json: {}, headers: { origin: "https://elsewhere.example" } });
      tried(task, route, "another origin", foreign);
      expect(without).toMatchObject({ status: 403, body: { code: "request-origin" } });
      expect(foreign).toMatchObject({ status: 403, body: { code: "request-origin" } });
    },
  );

  it.for(those(operators))("$name lets in who holds the operator's key, and nobody with another", async ({ route }, { task }) => {
    const knock = (key: string) =>
      new Client(inject("edge")).ask(route.method, route.path, {
        ...(route.method === "GET" ? {} : { json: {} }),
        headers: { authorization: `Operator ${key}` },
      });
    const answer = await knock(inject("operatorKey"));
    tried(task, route, "operator", answer);
    expect([401, 403]).not.toContain(answer.status);
    expect(answer.status).toBeLessThan(500);
    expect(await knock(`${inject("operatorKey")}x`)).toMatchObject({ status: 401, body: { code: "session-missing" } });
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
