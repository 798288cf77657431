import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { Authenticator, type Told } from "../helpers/authenticator.ts";
import { Client, type Company, type Loose, newCompany, type Reply } from "../helpers/edge.ts";
import { AHEAD, startTwoEdges, type TwoEdges } from "../helpers/two-edges.ts";
import { verifyLedger } from "../helpers/verifier.ts";

/** Getting in, at two workers over one database whose clocks the tests set. */
let edges: TwoEdges;
let company: Company;
beforeAll(async () => {
  edges = await startTwoEdges();
  company = await newCompany(edges.urls[0], edges.operatorKey);
}, 120_000);
afterAll(() => edges?.stop());

const MINUTE = 60_000;
const HOUR = 60 * MINUTE;
const DAY = 24 * HOUR;

/** An address that nothing else comes from. */
let addresses = 0;
const newAddress = (): string => {
  addresses += 1;
  return `203.0.113.${addresses}`;
};
const at = (edge: 0 | 1, cookie = ""): Client => Object.assign(new Client(edges.urls[edge]), { cookie });
const from = (address: string, ahead = 0): Readonly<Record<string, string>> => ({ "cf-connecting-ip": address, [AHEAD]: String(ahead) });
const cookieOf = (reply: Reply, name = "session"): string =>
  reply.headers
    .getSetCookie()
    .find((one) => one.startsWith(`${name}=`))
    ?.split(";")[0] ?? "";
const newPerson = async (name: string, role: string): Promise<string> =>
  (await company.owner.post("/api/people", { name, role })).body.person;
/** What an answer says, without what names this one request. */
const said = ({ status, body }: Reply): object => ({ status, ...body, requestId: "" });

describe("a crew's code", () => {
  const make = async (person: string, days?: number) =>
    (await company.office.post(`/api/people/${person}/codes`, days === undefined ? {} : { days })).body;
  const join = (given: object, address = newAddress(), ahead = 0, edge: 0 | 1 = 1): Promise<Reply> =>
    at(edge).ask("POST", "/api/join", { json: given, headers: from(address, ahead) });
  const byFours = (digits: string): string => `${digits.slice(0, 4)} ${digits.slice(4, 8)} ${digits.slice(8)}`;

  it("takes a phone into use once, typed with its gaps, at whichever edge", async () => {
    const person = await newPerson("Lou Ash", "crew");
    const made = await make(person);
    expect(made.digits).toMatch(/^\d{12}$/);
    expect(made.picture).toMatch(/^\/join#[A-Za-z0-9_-]{43}$/);
    // three days, as the office's page says it
    expect(Math.abs(made.ends - Date.now() - 3 * DAY)).toBeLessThan(MINUTE);
    const joined = await join({ digits: byFours(made.digits) });
    expect(joined.status).toBe(204);
    const phone = at(0, cookieOf(joined));
    expect((await phone.get("/api/session")).body).toMatchObject({ person, role: "crew" });
    const again = await join({ digits: made.digits });
    expect(again).toMatchObject({ status: 404, body: { code: "join-code-unknown" } });
    // the picture of the same code is used up with it
    expect((await join({ token: made.picture.slice(6) })).status).toBe(404);
    const { codes } = (await company.office.get("/api/codes")).body;
    expect(codes.find(({ code }: { code: string }) => code === made.code)).toMatchObject({ is: "used", person });
    const { sessions } = (await company.office.get(`/api/people/${person}/access`)).body;
    expect(sessions).toMatchObject([{ way: "code", here: false }]);
  });

  it("is known by its picture too, and neither is kept as it is", async () => {
    const person = await newPerson("Lee Moss", "crew");
    const made = await make(person, 14);
    const token = made.picture.slice(6);
    const kept = JSON.stringify(await edges.rows("join_code"));
    expect(kept).toContain(made.code);
    expect([made.digits, token].filter((secret) => kept.includes(secret))).toEqual([]);
    expect((await join({ token })).status).toBe(204);
    expect((await join({ digits: made.digits })).status).toBe(404);
  });

  it("used, run out, withdrawn, never given, and of one who has left: one answer", async () => {
    const person = await newPerson("Kit Reed", "crew");
    const [used, over, withdrawn] = [await make(person), await make(person), await make(person)];
    expect((await join({ digits: used.digits })).status).toBe(204);
    expect((await company.office.post(`/api/codes/${withdrawn.code}/withdraw`)).status).toBe(204);
    expect((await company.office.post(`/api/codes/${withdrawn.code}/withdraw`)).status).toBe(404);
    const left = await newPerson("Sal Fern", "crew");
    const lefts = await make(left);
    expect((await company.owner.ask("DELETE", `/api/people/${left}`)).status).toBe(204);
    const answers = [
      await join({ digits: used.digits }),
      await join({ digits: over.digits }, newAddress(), 3 * DAY + MINUTE),
      await join({ digits: withdrawn.digits }),
      await join({ digits: lefts.digits }),
      await join({ digits: "123456789012" }),
      await join({ token: "A".repeat(43) }),
      await join({ digits: `${used.digits} ` }),
    ];
    for (const answer of answers) expect(said(answer)).toEqual(said(answers[0] as Reply));
    expect(answers[0]).toMatchObject({ status: 404, body: { code: "join-code-unknown" } });
    // not a minute too early
    expect((await join({ digits: over.digits }, newAddress(), 3 * DAY - MINUTE)).status).toBe(204);
  });

  it("is for crews alone, and the office makes it", async () => {
    expect(await company.owner.post(`/api/people/${company.people.office}/codes`, {})).toMatchObject({ body: { code: "join-code-crew" } });
    expect(await company.crew.post(`/api/people/${company.people.crew}/codes`, {})).toMatchObject({ status: 403 });
  });

  it("cannot be guessed at over two edges: ten tries, then patience, and the picture goes on", async () => {
    const person = await newPerson("Jo Birk", "crew");
    const made = await make(person);
    const address = newAddress();
    const guess = (edge: 0 | 1, ahead = 0): Promise<Reply> => join({ digits: "000000000000" }, address, ahead, edge);
    const tries = await Promise.all(Array.from({ length: 14 }, (_, i) => guess(i % 2 === 0 ? 0 : 1)));
    expect(tries.map(({ status }) => status).sort()).toEqual([...Array(10).fill(404), ...Array(4).fill(429)]);
    const held = await join({ digits: made.digits }, address);
    expect(held).toMatchObject({ status: 429, body: { code: "too-many-tries", status: 429 } });
    expect(held.headers.get("content-type")).toBe("application/problem+json");
    const wait = Number(held.headers.get("retry-after"));
    expect(wait).toBeGreaterThan(9 * 60);
    expect(wait).toBeLessThanOrEqual(600);
    // whoever goes on trying does not make it longer
    expect((await guess(0, 9 * MINUTE)).status).toBe(429);
    const other = await make(person);
    expect((await join({ token: other.picture.slice(6) }, address)).status).toBe(204);
    expect((await join({ digits: made.digits }, address, wait * 1000)).status).toBe(204);
    expect((await make(person)).digits).not.toBe(made.digits);
  });
});

describe("a passkey", () => {
  const PARTY = "records.example.net";
  const told = (challenge: string, more: Partial<Told> = {}): Told => ({ origin: edges.origin, party: PARTY, challenge, ...more });
  const make = async (client: Client, device: Authenticator, more: Partial<Told> = {}, name = "desk"): Promise<Reply> => {
    const { options } = (await client.post("/api/passkeys/options")).body;
    return client.post("/api/passkeys", { name, credential: device.make(told(options.challenge, more)) });
  };
  interface Trying {
    readonly edge?: 0 | 1;
    readonly address?: string;
    readonly more?: Partial<Told>;
    readonly ahead?: number;
  }
  const signIn = async (device: Authenticator, { edge = 0, address = newAddress(), more = {}, ahead = 0 }: Trying = {}): Promise<Reply> => {
    const asked = await at(edge).ask("POST", "/api/sign-in/options", { headers: from(address) });
    expect(asked.body.options.allowCredentials ?? []).toEqual([]);
    const credential = device.get(told(asked.body.options.challenge, more));
    return at(edge, cookieOf(asked, "try")).ask("POST", "/api/sign-in", { json: { credential }, headers: from(address, ahead) });
  };
  const invited = async (role: string): Promise<{ person: string; client: Client }> => {
    const person = await newPerson("Ada Wren", role);
    const { link } = (await company.owner.post(`/api/people/${person}/links`)).body;
    const came = await at(0).ask("GET", link);
    // a one-time link leads to the making of a passkey, a crew's to the first page
    expect(came.headers.get("location")).toBe(role === "crew" ? "/" : "/first-passkey");
    return { person, client: at(0, cookieOf(came)) };
  };

  it("is made after the link, signs in at the other edge, and the link gives way to it", async () => {
    const { person, client } = await invited("office");
    const device = new Authenticator();
    const made = await make(client, device);
    expect(made.status).toBe(201);
    const came = await signIn(device, { edge: 1, more: { counter: 1 } });
    expect(came.status).toBe(204);
    const desk = at(1, cookieOf(came));
    expect((await desk.get("/api/session")).body).toMatchObject({ person, role: "office" });
    const { passkeys, sessions } = (await desk.get("/api/access")).body;
    expect(passkeys).toMatchObject([{ passkey: made.body.passkey, name: "desk", synced: false }]);
    expect(sessions.map(({ way, here }: { way: string; here: boolean }) => `${way} ${here}`).sort()).toEqual([
      "link false",
      "passkey true",
    ]);
    expect(await company.owner.post(`/api/people/${person}/links`)).toMatchObject({ status: 409, body: { code: "link-passkeys" } });
  });

  it("made and removed stands in the company's ledger: whose it is, and who did it; a copy of one is not taken", async () => {
    const { person, client } = await invited("office");
    const devices = [new Authenticator(), new Authenticator()] as const;
    const first = (await make(client, devices[0])).body.passkey;
    const second = (await make(client, devices[1])).body.passkey;
    expect(await make(client, devices[1])).toMatchObject({ status: 409, body: { code: "passkey-there" } });
    expect((await company.owner.post(`/api/passkeys/${first}/withdraw`)).status).toBe(204);
    expect((await company.owner.post(`/api/passkeys/${first}/withdraw`)).status).toBe(404);
    const ledger = (await company.owner.get("/api/company/ledger")).body;
    const own = ledger.entries.filter(({ body }: Loose) => body.what.content.person === person && "passkey" in body.what.content);
    const told = own.map(({ envelope, body }: Loose) => [envelope.kind, envelope.author.person, body.what.content.passkey]);
    expect(told).toEqual([
      ["passkey-made", person, first],
      ["passkey-made", person, second],
      ["passkey-withdrawn", company.people.owner, first],
    ]);
    expect(verifyLedger(JSON.stringify(ledger)).faults).toEqual([]);
    // the name that was given to it stands in no entry: it may name somebody
    expect(JSON.stringify(own)).not.toContain("desk");
  });

  it("that is unknown, removed, late, replayed, unverified, of another origin or wrongly signed: one answer", async () => {
    const { client } = await invited("office");
    const [device, second] = [new Authenticator(), new Authenticator()];
    const first = (await make(client, device)).body.passkey;
    expect((await make(client, second)).status).toBe(201);
    const right = await signIn(second, { more: { counter: 3 } });
    expect(right.status).toBe(204);
    const posing = Object.assign(new Authenticator(), { id: second.id });
    expect((await client.post(`/api/passkeys/${first}/withdraw`)).status).toBe(204);
    const address = newAddress();
    const asked = await at(0).ask("POST", "/api/sign-in/options", { headers: from(address) });
    const credential = second.get(told(asked.body.options.challenge, { counter: 9 }));
    const send = (cookie: string): Promise<Reply> =>
      at(0, cookie).ask("POST", "/api/sign-in", { json: { credential }, headers: from(address) });
    const elsewhere = await send("");
    expect((await send(cookieOf(asked, "try"))).status).toBe(204);
    const answers = [
      await send(cookieOf(asked, "try")),
      elsewhere,
      await signIn(new Authenticator()),
      await signIn(device),
      await signIn(posing, { more: { counter: 20 } }),
      await signIn(second, { more: { counter: 20, verifiesUser: false } }),
      await signIn(second, { more: { counter: 20, origin: "https://records.example.net.evil.example" } }),
      await signIn(second, { more: { counter: 20, party: "evil.example" } }),
      // a counter that went back: a copy of the key
      await signIn(second, { more: { counter: 9 } }),
      await signIn(second, { more: { counter: 20, userHandle: "bm9ib2R5" } }),
      await signIn(second, { more: { counter: 20 }, ahead: 5 * MINUTE + 1000 }),
    ];
    for (const answer of answers) expect(said(answer)).toEqual(said(answers[0] as Reply));
    expect(answers[0]).toMatchObject({ status: 404, body: { code: "sign-in-unknown" } });
    expect((await signIn(second, { more: { counter: 21 } })).status).toBe(204);
  });

  it("takes the same time to refuse whether it is known or not", async () => {
    const { client } = await invited("office");
    const device = new Authenticator();
    await make(client, device);
    const posing = (): Authenticator => Object.assign(new Authenticator(), { id: new Authenticator().id });
    const timed = async (of: Authenticator): Promise<number> => {
      const address = newAddress();
      const asked = await at(0).ask("POST", "/api/sign-in/options", { headers: from(address) });
      const credential = of.get(told(asked.body.options.challenge));
      const began = performance.now();
      await at(0, cookieOf(asked, "try")).ask("POST", "/api/sign-in", { json: { credential }, headers: from(address) });
      return performance.now() - began;
    };
    const times = { known: [] as number[], unknown: [] as number[] };
    for (let i = 0; i < 25; i += 1) {
      // the account's own limit is ten tries: what it answers then takes no less work
      times.known.push(await timed(Object.assign(new Authenticator(), { id: device.id })));
      times.unknown.push(await timed(posing()));
    }
    const median = (all: number[]): number => all.sort((a, b) => a - b)[all.length >> 1] ?? 0;
    const ratio = median(times.known) / median(times.unknown);
    process.stdout.write(`Refusing a known passkey against an unknown one: ratio of medians ${ratio.toFixed(2)}\n`);
    expect(ratio).toBeGreaterThan(0.6);
    expect(ratio).toBeLessThan(1.6);
  });

  it("whose signature was wrong many times still lets its owner in", async () => {
    const { client } = await invited("office");
    const device = new Authenticator();
    await make(client, device);
    const posing = Object.assign(new Authenticator(), { id: device.id });
    const tries: Reply[] = [];
    for (let i = 0; i < 12; i += 1) tries.push(await signIn(posing, { edge: i % 2 === 0 ? 0 : 1 }));
    expect(tries.map(({ status }) => status)).toEqual([...Array(10).fill(404), 429, 429]);
    expect((await signIn(device, { edge: 1 })).status).toBe(204);
  });

  it("the only one stays; another may go, and what it signed in ends with it", async () => {
    const { client } = await invited("company owner");
    const [one, two] = [new Authenticator(), new Authenticator()];
    const first = (await make(client, one)).body.passkey;
    expect(await client.post(`/api/passkeys/${first}/withdraw`)).toMatchObject({ status: 409, body: { code: "passkey-last" } });
    await make(client, two, {}, "spare");
    const desk = at(1, cookieOf(await signIn(one)));
    expect((await desk.get("/api/session")).status).toBe(200);
    // the office may not touch an owner's
    expect((await company.office.post(`/api/passkeys/${first}/withdraw`)).status).toBe(404);
    expect((await client.post(`/api/passkeys/${first}/withdraw`)).status).toBe(204);
    expect(await desk.get("/api/session")).toMatchObject({ status: 401, body: { code: "session-ended" } });
    expect((await signIn(one)).status).toBe(404);
    expect((await signIn(two)).status).toBe(204);
  });

  it("that is lost: another company owner withdraws all and gives one link", async () => {
    const { person, client } = await invited("company owner");
    const device = new Authenticator();
    await make(client, device);
    expect((await company.office.post(`/api/people/${person}/recovery`)).status).toBe(403);
    expect((await client.post(`/api/people/${person}/recovery`)).status).toBe(403);
    const { link } = (await company.owner.post(`/api/people/${person}/recovery`)).body;
    expect((await signIn(device)).status).toBe(404);
    expect(await client.get("/api/session")).toMatchObject({ status: 401, body: { code: "session-ended" } });
    const came = await at(1).ask("GET", link);
    expect(came.headers.get("location")).toBe("/first-passkey");
    expect((await at(1).ask("GET", link)).status).toBe(404);
    expect((await make(at(1, cookieOf(came)), new Authenticator())).status).toBe(201);
  });

  it("that the only company owner has lost: whoever runs the server gives one link, to an owner alone", async () => {
    const alone = await newCompany(edges.urls[0], edges.operatorKey);
    const headers = { authorization: `Operator ${edges.operatorKey}` };
    const ask = (person: string, company = alone.company): Promise<Reply> =>
      at(0).ask("POST", `/api/companies/${company}/recovery`, { json: { person }, headers });
    for (const [person, of] of [
      [alone.people.office, alone.company],
      [alone.people.owner, company.company],
      [alone.people.owner, "nobodys"],
    ] as const)
      expect(await ask(person, of)).toMatchObject({ status: 404, body: { code: "person-unknown" } });
    const { link } = (await ask(alone.people.owner)).body;
    expect(await alone.owner.get("/api/session")).toMatchObject({ status: 401, body: { code: "session-ended" } });
    const owner = at(1, cookieOf(await at(1).ask("GET", link)));
    const { entries } = (await owner.get("/api/company/ledger")).body;
    expect(entries.at(-1).body.what.content).toEqual({ person: alone.people.owner, by: "operator" });
  });

  it("is not made without the user verified, for another origin, twice, or with another session's challenge", async () => {
    const [{ client }, other] = [await invited("office"), await invited("office")];
    const device = new Authenticator();
    for (const more of [{ verifiesUser: false }, { origin: "https://evil.example" }, { party: "evil.example" }])
      expect(await make(client, device, more)).toMatchObject({ status: 422, body: { code: "passkey-not-made" } });
    const { options } = (await client.post("/api/passkeys/options")).body;
    const credential = device.make(told(options.challenge));
    expect((await other.client.post("/api/passkeys", { name: "n", credential })).status).toBe(422);
    expect((await client.post("/api/passkeys", { name: "n", credential })).status).toBe(201);
    expect((await client.post("/api/passkeys", { name: "n", credential })).status).toBe(422);
    expect(await make(other.client, device)).toMatchObject({ status: 409, body: { code: "passkey-there" } });
    expect((await company.crew.post("/api/passkeys/options")).status).toBe(403);
  });
});

describe("a session", () => {
  const invited = async (role: string): Promise<Client> => {
    const person = await newPerson("Max Teal", role);
    const { link } = (await company.owner.post(`/api/people/${person}/links`)).body;
    return at(0, cookieOf(await at(0).ask("GET", link)));
  };
  const look = (client: Client, ahead: number): Promise<Reply> =>
    client.ask("GET", "/api/session", { headers: { [AHEAD]: String(ahead) } });

  it("of the office ends after 4 hours without use and after 12 whatever happens, a crew's after 60 days and 200", async () => {
    const [idle, busy] = [await invited("office"), await invited("office")];
    expect((await look(idle, 4 * HOUR - MINUTE)).status).toBe(200);
    expect((await look(idle, 8 * HOUR)).status).toBe(401);
    for (const hour of [3, 6, 9, 11.9]) expect((await look(busy, hour * HOUR)).status).toBe(200);
    expect(await look(busy, 12 * HOUR + MINUTE)).toMatchObject({ status: 401, body: { code: "session-ended" } });
    const crew = await invited("crew");
    expect((await look(crew, 59 * DAY)).status).toBe(200);
    expect((await look(crew, 120 * DAY)).status).toBe(401);
    const away = await invited("crew");
    for (const day of [59, 110, 160, 199]) expect((await look(away, day * DAY)).status).toBe(200);
    expect((await look(away, 200 * DAY + MINUTE)).status).toBe(401);
  });

  it("gets a new token after a day; the old one lasts until the new one is used, and two minutes more", async () => {
    const crew = await invited("crew");
    expect((await look(crew, DAY - MINUTE)).headers.get("set-cookie")).toBeNull();
    const renewed = await look(crew, DAY + MINUTE);
    const next = at(1, cookieOf(renewed));
    expect(next.cookie).not.toBe(crew.cookie);
    // the rest of its 200 days
    expect(renewed.headers.get("set-cookie")).toMatch(/^session=[\w-]{43}; Max-Age=171935\d\d; HttpOnly; SameSite=Strict; Path=\/$/);
    // that answer was lost on its way: the phone goes on with what it has
    expect((await look(crew, DAY + 20 * MINUTE)).status).toBe(200);
    expect((await look(next, DAY + 30 * MINUTE)).status).toBe(200);
    expect((await look(crew, DAY + 31 * MINUTE)).status).toBe(200);
    expect(await look(crew, DAY + 33 * MINUTE)).toMatchObject({ status: 401, body: { code: "session-ended" } });
    expect((await look(next, DAY + 33 * MINUTE)).status).toBe(200);
  });

  it("is listed, and ended by its person, the crew's by the office, any by the owner, and by nobody else", async () => {
    const [office, crew] = [await invited("office"), await invited("crew")];
    const own = async (client: Client): Promise<string> => (await client.get("/api/access")).body.sessions[0].session;
    const [offices, crews, owners] = [await own(office), await own(crew), await own(company.owner)];
    for (const [client, session] of [
      [crew, offices],
      [office, owners],
      [company.crew, crews],
    ] as const)
      expect(await client.post(`/api/sessions/${session}/end`)).toMatchObject({ status: 404, body: { code: "session-unknown" } });
    expect((await office.post(`/api/sessions/${crews}/end`)).status).toBe(204);
    expect((await crew.get("/api/session")).status).toBe(401);
    expect((await company.owner.post(`/api/sessions/${offices}/end`)).status).toBe(204);
    expect((await office.get("/api/session")).status).toBe(401);
  });

  it("is always a new one after signing in, and the one that the browser had ends", async () => {
    const person = await newPerson("Uma Dale", "crew");
    const link = async (): Promise<string> => (await company.office.post(`/api/people/${person}/links`)).body.link;
    const first = at(0, cookieOf(await at(0).ask("GET", await link())));
    const second = await first.ask("GET", await link());
    expect(cookieOf(second)).not.toBe(first.cookie);
    expect((await first.get("/api/session")).status).toBe(401);
    expect((await at(0, cookieOf(second)).get("/api/session")).status).toBe(200);
  });

  it("is not used by a page of another origin, and no link is used up by a picture or a look ahead", async () => {
    const foreign = (site: string): Promise<Reply> =>
      company.office.ask("POST", "/api/people", { json: { name: "N", role: "crew" }, headers: { "sec-fetch-site": site } });
    for (const site of ["cross-site", "same-site", "none"])
      expect(await foreign(site)).toMatchObject({ status: 403, body: { code: "request-origin" } });
    expect((await foreign("same-origin")).status).toBe(201);
    const { link } = (await company.office.post(`/api/people/${company.people.crew}/links`)).body;
    expect((await at(0).ask("GET", link, { headers: { "sec-fetch-dest": "image" } })).status).toBe(404);
    expect((await at(0).ask("HEAD", link)).status).toBe(404);
    expect((await at(0).ask("GET", link, { headers: { "sec-fetch-dest": "document" } })).status).toBe(303);
  });
});

describe("a door that is tried too often", () => {
  it.each([
    { door: "a sign-in link", most: 30, ask: (edge: 0 | 1) => at(edge), path: "/in/none" },
    { door: "a link for others", most: 30, ask: (edge: 0 | 1) => at(edge), path: "/api/others/none" },
    { door: "a released record", most: 30, ask: (edge: 0 | 1) => at(edge), path: "/released/none/pdf" },
    { door: "a session", most: 300, ask: (edge: 0 | 1) => at(edge, `session=${"A".repeat(43)}`), path: "/api/session" },
  ])("$door: counted over both edges, then 429, and what is right still comes in", async ({ most, ask, path }) => {
    const headers = from(newAddress());
    const tries = await Promise.all(Array.from({ length: most + 5 }, (_, i) => ask(i % 2 === 0 ? 0 : 1).ask("GET", path, { headers })));
    expect(tries.filter(({ status }) => status === 429)).toHaveLength(5);
    expect(Number(tries.find(({ status }) => status === 429)?.headers.get("retry-after"))).toBeGreaterThan(500);
    const { link } = (await company.office.post(`/api/people/${company.people.crew}/links`)).body;
    expect((await at(1).ask("GET", link, { headers })).status).toBe(303);
    expect((await company.owner.ask("GET", "/api/session", { headers })).status).toBe(200);
  });

  it("the operator's key, and no address is kept as it is", async () => {
    const address = newAddress();
    const ask = (key: string): Promise<Reply> =>
      at(0).ask("POST", "/api/companies", { json: {}, headers: { ...from(address), authorization: `Operator ${key}` } });
    const tries = await Promise.all(Array.from({ length: 62 }, async () => (await ask("wrong")).status));
    expect(tries.sort()).toEqual([...Array(60).fill(401), 429, 429]);
    // the right key is let in and told what is wrong with the rest
    expect((await ask(edges.operatorKey)).status).toBe(400);
    const kept = JSON.stringify(await edges.rows("tries"));
    expect(kept.length).toBeGreaterThan(1000);
    expect(kept).not.toContain("203.0.113");
  });
});
