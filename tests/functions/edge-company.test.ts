import { beforeAll, describe, expect, inject, it } from "vitest";
import { rowsIn } from "../helpers/database.ts";
import { batchOf, Client, type Company, type Loose, newCompany, newId, newJob, tenItems } from "../helpers/edge.ts";
import { verifyLedger } from "../helpers/verifier.ts";

let company: Company;
beforeAll(async () => {
  company = await newCompany(inject("edge"), inject("operatorKey"));
});
const settings = { name: "Stillwater Yard Works", zone: "America/Chicago", units: "metric", language: "es" };

describe("the operator", () => {
  it("founds companies by the key alone", async () => {
    const json = { ...settings, owner: { name: "A" } };
    const nobody = new Client(inject("edge"));
    for (const authorization of ["Operator wrong", "Operator ", "", `Bearer ${inject("operatorKey")}`]) {
      expect(await nobody.ask("POST", "/api/companies", { json, headers: { authorization } })).toMatchObject({ status: 401 });
    }
    expect((await company.owner.post("/api/companies", json)).status).toBe(401);
  });

  it("founds one company under an id, however many ask at once, whole with its owner and the owner's link", async () => {
    const headers = { authorization: `Operator ${inject("operatorKey")}` };
    const id = newId();
    const answers = await Promise.all(
      ["A", "B", "C", "D", "E"].map((name) =>
        new Client(inject("edge")).ask("POST", "/api/companies", { json: { ...settings, id, owner: { name } }, headers }),
      ),
    );
    expect(answers.map(({ status }) => status).sort()).toEqual([201, 400, 400, 400, 400]);
    const count = (table: string): number => rowsIn(inject("stackDirectory"), table, `SELECT * FROM ${table} WHERE company = ?`, id).length;
    expect(["entry", "person", "link", "version"].map(count)).toEqual([2, 1, 1, 1]);
    const owner = await new Client(inject("edge")).signIn(answers.find(({ status }) => status === 201)?.body.ownerLink);
    const ledger = await owner.get("/api/company/ledger");
    expect(ledger.body.entries.map((e: Loose) => e.envelope.kind)).toEqual(["settings-set", "person-added"]);
    expect(verifyLedger(new TextDecoder().decode(ledger.bytes)).faults).toEqual([]);
  });

  it("is told of an id that is taken, and of a shape that is wrong", async () => {
    const headers = { authorization: `Operator ${inject("operatorKey")}` };
    const nobody = new Client(inject("edge"));
    const taken = await nobody.ask("POST", "/api/companies", { json: { ...settings, id: company.company, owner: { name: "A" } }, headers });
    expect(taken).toMatchObject({ status: 400, body: { code: "request-shape", place: "id" } });
    const wrong = await nobody.ask("POST", "/api/companies", { json: { ...settings, zone: 5, owner: { name: "A" } }, headers });
    expect(wrong).toMatchObject({ status: 400, body: { code: "request-shape", place: "zone" } });
  });
});

describe("the company's own words", () => {
  it("go along with a session in its language alone; nothing goes along where none were set", async () => {
    const own = await newCompany(inject("edge"), inject("operatorKey"));
    const set = (words?: object, language = "en") =>
      own.owner.ask("PUT", "/api/company/settings", { json: { ...settings, language, ...(words === undefined ? {} : { words }) } });
    expect((await own.crew.get("/api/session")).body).not.toHaveProperty("words");
    expect((await set({ "cover-now": { en: "Bury it", es: "Enterrarlo" }, "way-enter": { es: "Apuntarlo" } })).status).toBe(200);
    expect((await own.crew.get("/api/session")).body.words).toEqual({ "cover-now": "Bury it" });
    expect((await set({ "cover-now": { en: "Bury it", es: "Enterrarlo" }, "way-enter": { es: "Apuntarlo" } }, "es")).status).toBe(200);
    expect((await own.crew.get("/api/session")).body.words).toEqual({ "cover-now": "Enterrarlo", "way-enter": "Apuntarlo" });
    expect((await set({ "cover-now": "Bury it" })).status).toBe(400);
    expect((await set()).status).toBe(200);
    expect((await own.crew.get("/api/session")).body).not.toHaveProperty("words");
  });
});

describe("sessions and links", () => {
  it("tells who is signed in", async () => {
    const { body } = await company.crew.get("/api/session");
    expect(body).toMatchObject({
      company: company.company,
      person: company.people.crew,
      name: "Sam Birch",
      role: "crew",
      companyName: "Stillwater Yard Works",
    });
    expect(JSON.stringify(body)).not.toContain("hash");
  });

  it("a link signs in once, with a cookie that scripts cannot read", async () => {
    const { link } = (await company.owner.post(`/api/people/${company.people.crew}/links`)).body;
    expect(link).toMatch(/^\/in\/[A-Za-z0-9_-]{43}$/);
    const look = await new Client(inject("edge")).ask("HEAD", link);
    expect(look.headers.get("set-cookie")).toBeNull();
    const first = await new Client(inject("edge")).ask("GET", link);
    expect(first.status).toBe(303);
    expect(first.headers.get("location")).toBe("/");
    expect(first.headers.get("set-cookie")).toMatch(/^session=[A-Za-z0-9_-]{43}; .*HttpOnly; SameSite=Strict; Path=\/$/);
    const second = await new Client(inject("edge")).ask("GET", link);
    expect(second.status).toBe(404);
    expect(new TextDecoder().decode(second.bytes)).toContain("Ask the office");
  });

  it("ends one session and no other", async () => {
    const { link } = (await company.owner.post(`/api/people/${company.people.crew}/links`)).body;
    const second = await new Client(inject("edge")).signIn(link);
    expect((await second.post("/api/session/end")).status).toBe(204);
    expect(await second.get("/api/session")).toMatchObject({ status: 401, body: { code: "session-ended" } });
    expect((await company.crew.get("/api/session")).status).toBe(200);
  });

  it("withdraws all of a person's sessions and waiting links at once", async () => {
    const { person } = (await company.office.post("/api/people", { name: "Lou Ash", role: "crew" })).body;
    const [one, waiting] = [
      (await company.office.post(`/api/people/${person}/links`)).body.link,
      (await company.office.post(`/api/people/${person}/links`)).body.link,
    ];
    const client = await new Client(inject("edge")).signIn(one);
    expect((await client.get("/api/jobs")).status).toBe(200);
    expect((await company.office.ask("DELETE", `/api/people/${person}/sessions`)).status).toBe(204);
    expect(await client.get("/api/jobs")).toMatchObject({ status: 401, body: { code: "session-ended" } });
    expect((await new Client(inject("edge")).ask("GET", waiting)).status).toBe(404);
  });

  it("one who has left is signed out everywhere at once, and only what was made before is still his", async () => {
    const { person } = (await company.office.post("/api/people", { name: "Lou Ash", role: "crew" })).body;
    const link = async () => (await company.office.post(`/api/people/${person}/links`)).body.link;
    const [one, two] = [await new Client(inject("edge")).signIn(await link()), await new Client(inject("edge")).signIn(await link())];
    const waiting = await link();
    const { job, phone } = await newJob(company);
    const left = () => company.owner.ask("DELETE", `/api/people/${person}`);
    for (const client of [company.crew, company.office])
      expect(await client.ask("DELETE", `/api/people/${person}`)).toMatchObject({ status: 403, body: { code: "role-not-allowed" } });
    expect((await one.get("/api/jobs")).status).toBe(200);
    expect((await left()).status).toBe(204);
    for (const client of [one, two]) expect(await client.get("/api/jobs")).toMatchObject({ status: 401, body: { code: "session-ended" } });
    expect((await new Client(inject("edge")).ask("GET", waiting)).status).toBe(404);
    expect((await company.office.post(`/api/people/${person}/links`)).body.code).toBe("person-unknown");
    const note = { text: "ground frozen" };
    const before = await phone.entry(job, person, "note-for-record", note, { made: Date.now() - 3_600_000 });
    const after = await phone.entry(job, person, "note-for-record", note, { made: Date.now() + 3_600_000 });
    const { answers } = (await company.crew.post(`/api/jobs/${job}/entries`, batchOf(before, after))).body;
    expect([answers[0].outcome, answers[1].refusal.code]).toEqual(["taken", "entry-author"]);
    const listed = (await company.office.get("/api/people")).body.people.find((p: Loose) => p.person === person);
    expect(listed.left).toBeGreaterThan(Date.now() - 60_000);
    const head = (await company.owner.get("/api/company")).body.head;
    expect((await left()).status).toBe(204);
    expect((await company.owner.get("/api/company")).body.head).toEqual(head);
    const ledger = await company.owner.get("/api/company/ledger");
    expect(ledger.body.entries.at(-1)).toMatchObject({ envelope: { kind: "person-left" }, body: { what: { content: { person } } } });
    expect(verifyLedger(new TextDecoder().decode(ledger.bytes)).faults).toEqual([]);
  });

  it("the company owner sends nobody away who is not there, and not herself", async () => {
    expect(await company.owner.ask("DELETE", `/api/people/${newId()}`)).toMatchObject({ status: 404, body: { code: "person-unknown" } });
    expect((await company.owner.ask("DELETE", `/api/people/${company.people.owner}`)).status).toBe(403);
    expect((await company.owner.get("/api/session")).status).toBe(200);
  });

  it("the office adds crew only, and makes no link for the company owner", async () => {
    expect((await company.office.post("/api/people", { name: "A", role: "crew" })).status).toBe(201);
    for (const role of ["office", "company owner"]) {
      expect(await company.office.post("/api/people", { name: "A", role })).toMatchObject({
        status: 403,
        body: { code: "role-not-allowed" },
      });
    }
    expect((await company.office.post(`/api/people/${company.people.owner}/links`)).status).toBe(403);
    expect((await company.office.ask("DELETE", `/api/people/${company.people.owner}/sessions`)).status).toBe(403);
  });
});

describe("the company's ledger", () => {
  it("takes settings, sheets, kit cards, instruments and people as entries, and verifies", async () => {
    const own = await newCompany(inject("edge"), inject("operatorKey"));
    const set = await own.owner.ask("PUT", "/api/company/settings", { json: { ...settings, warranty: { text: ["ours"] } } });
    const sheet = await own.office.post("/api/company/sheets", tenItems);
    const card = await own.office.post("/api/company/kit-cards", {
      id: "round-tank",
      part: "Round tank 36",
      facts: { basinDepth: { typed: "24", unit: "in" }, basinWeight: "unknown" },
    });
    const rule = await own.office.post("/api/company/instruments", { id: "rule-3", title: "Folding rule no. 3" });
    expect([set.status, sheet.status, card.status, rule.status]).toEqual([200, 201, 201, 201]);
    const ledger = await own.office.get("/api/company/ledger");
    expect(ledger.body.entries.map((e: Loose) => e.envelope.kind)).toEqual([
      "settings-set",
      "person-added",
      "person-added",
      "person-added",
      "settings-set",
      "sheet-set",
      "kit-card-set",
      "instrument-set",
    ]);
    expect(verifyLedger(new TextDecoder().decode(ledger.bytes))).toMatchObject({ ok: true, faults: [] });
    const view = (await own.crew.get("/api/company")).body;
    expect(view.settings).toMatchObject({ number: 5, digest: set.body.digest, content: { units: "metric", warranty: { text: ["ours"] } } });
    expect(view.sheets).toEqual([{ ...sheet.body, version: 1, title: (tenItems as { title: unknown }).title }]);
    expect(view.kitCards).toEqual([{ ...card.body, part: "Round tank 36" }]);
    expect(view.instruments).toMatchObject([{ ...rule.body, title: "Folding rule no. 3" }]);
    expect(view.head.number).toBe(8);
    const content = (await own.crew.get(`/api/company/versions/${card.body.digest}`)).body;
    expect(content).toMatchObject({ kind: "kit card", name: "round-tank", content: { facts: { basinWeight: "unknown" } } });
    expect((await own.crew.get("/api/session")).body).toMatchObject({ units: "metric", language: "es" });
  });

  it("the same content again is the same version; a change and the way back are two more", async () => {
    const first = (await company.office.post("/api/company/instruments", { id: "tape-1", title: "Tape" })).body;
    const again = (await company.office.post("/api/company/instruments", { title: "Tape", id: "tape-1" })).body;
    const changed = (await company.office.post("/api/company/instruments", { id: "tape-1", title: "Tape, mended" })).body;
    const back = (await company.office.post("/api/company/instruments", { id: "tape-1", title: "Tape" })).body;
    expect(again).toEqual(first);
    expect(changed.number).toBe(first.number + 1);
    expect(back).toEqual({ ...first, number: first.number + 2 });
  });

  it("tells all the faults of a tolerance sheet at once, each with its place and sentence", async () => {
    const bent = structuredClone(tenItems) as Loose;
    bent.items[0].step = "no-such-step";
    bent.items[1].holds = "no-such-covering";
    const { status, body } = await company.office.post("/api/company/sheets", bent);
    expect(status).toBe(422);
    expect(body.faults.length).toBeGreaterThanOrEqual(2);
    const codes = body.faults.map((fault: { code: string }) => fault.code);
    expect(codes.every((code: string) => code === "sheet-unknown-name")).toBe(true);
    for (const fault of body.faults) expect(fault.says.length).toBeGreaterThan(15);
    expect(body.code).toBe(body.faults[0].code);
  });

  it("refuses a limit that cannot be decided, and a sheet that is none", async () => {
    const narrow = structuredClone(tenItems) as Loose;
    const check = narrow.checks.find((one: Loose) => one.weight === "holds");
    for (const side of ["lower", "upper"]) if (check[side] !== undefined) check[side] = check.aim + (side === "upper" ? 10 : -10);
    const answer = await company.office.post("/api/company/sheets", narrow);
    expect(answer.body.faults.map((fault: { code: string }) => fault.code)).toContain("sheet-limit-undecidable");
    expect((await company.office.post("/api/company/sheets", { format: 1 })).status).toBe(422);
    expect((await company.office.post("/api/company/sheets", [])).status).toBe(400);
  });

  it("a kit card holds facts in words, such as which way a nut tightens", async () => {
    const facts = { nutDirection: "to the left", socketDepth: { typed: "1 1/8", unit: "in" }, tightening: "unknown" };
    const card = await company.office.post("/api/company/kit-cards", {
      id: "wall-fitting",
      part: "Wall fitting",
      facts,
      notes: "own paper",
    });
    expect(card.status).toBe(201);
    const { content } = (await company.crew.get(`/api/company/versions/${card.body.digest}`)).body;
    expect(content).toEqual({ id: "wall-fitting", part: "Wall fitting", facts, notes: "own paper" });
    const nothing = await company.office.post("/api/company/kit-cards", { id: "b", part: "p", facts: { nutDirection: "" } });
    expect(nothing).toMatchObject({ status: 400, body: { code: "request-shape" } });
  });

  it("refuses a kit card without a part, and a figure that says nothing", async () => {
    expect(await company.office.post("/api/company/kit-cards", { id: "a", facts: {} })).toMatchObject({
      status: 400,
      body: { place: "part" },
    });
    const empty = { id: "a", part: "p", facts: { depth: { typed: "", unit: "in" } } };
    expect(await company.office.post("/api/company/kit-cards", empty)).toMatchObject({ status: 400, body: { place: "facts/depth/typed" } });
  });

  it("a version that the company does not have is not there", async () => {
    const answer = await company.crew.get(`/api/company/versions/${"0".repeat(64)}`);
    expect(answer).toMatchObject({ status: 404, body: { code: "entry-unknown-version", status: 404, place: "digest" } });
    expect(answer.headers.get("content-type")).toBe("application/problem+json");
  });

  it("a job takes over only versions of its own company", async () => {
    const other = await newCompany(inject("edge"), inject("operatorKey"));
    const card = (await other.office.post("/api/company/kit-cards", { id: "tank", part: "Their tank", facts: {} })).body;
    const { job, phone } = await newJob(company);
    const took = await phone.entry(job, company.people.office, "version-taken-over", {
      thing: "kit card",
      name: card.name,
      number: card.number,
      digest: card.digest,
    });
    const { body } = await company.office.post(`/api/jobs/${job}/entries`, batchOf(took));
    expect(body.answers[0].refusal.code).toBe("entry-unknown-version");
  });
});

describe("the demo's links", () => {
  it("are made by the operator for the demo company alone, and work again until they are withdrawn", async () => {
    const headers = { authorization: `Operator ${inject("operatorKey")}` };
    const nobody = new Client(inject("edge"));
    expect((await nobody.ask("POST", "/api/demo/links")).status).toBe(401);
    await newCompany(inject("edge"), inject("operatorKey"), "demo").catch(() => undefined);
    const links = (await nobody.ask("POST", "/api/demo/links", { headers })).body;
    const first = await new Client(inject("edge")).signIn(links.crew);
    const second = await new Client(inject("edge")).signIn(links.crew);
    expect((await second.get("/api/session")).body).toMatchObject({ company: "demo", role: "crew" });
    const office = await new Client(inject("edge")).signIn(links.office);
    const { person } = (await first.get("/api/session")).body;
    expect((await office.ask("DELETE", `/api/people/${person}/sessions`)).status).toBe(204);
    expect((await first.get("/api/session")).status).toBe(401);
    expect((await new Client(inject("edge")).ask("GET", links.crew)).status).toBe(404);
  });
});

it("asks for JSON, and says where it is broken", async () => {
  const bytes = new TextEncoder().encode("{");
  const json = { "content-type": "application/json" };
  expect(await company.office.ask("POST", "/api/people", { bytes, headers: json })).toMatchObject({
    status: 400,
    body: { code: "request-shape", place: "body" },
  });
  expect(await company.office.ask("POST", "/api/people", { bytes, headers: { "content-type": "text/plain" } })).toMatchObject({
    status: 415,
  });
  const broken = new Uint8Array([0x22, 0xff, 0xfe, 0x22]);
  expect((await company.office.ask("POST", "/api/people", { bytes: broken, headers: json })).body.figures.why).toBe("no UTF-8");
});
