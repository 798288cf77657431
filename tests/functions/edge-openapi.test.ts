import { readdir, readFile } from "node:fs/promises";
import { PDFDocument } from "@cantoo/pdf-lib";
import { createConfig, lintFromString } from "@redocly/openapi-core";
import { beforeAll, describe, expect, inject, it } from "vitest";
import { refusalCodes } from "#core/outcome/index.ts";
import type { Operation } from "#core/wire/index.ts";
import { markSvg } from "#infra/demo/mark.ts";
import { Authenticator } from "../helpers/authenticator.ts";
import { Described } from "../helpers/described.ts";
import {
  batchOf,
  Client,
  type Company,
  type Loose,
  newCompany,
  newId,
  newJob,
  type Phone,
  sha256,
  tenItems,
  until,
} from "../helpers/edge.ts";

// By variable names: the edge is written for another platform's types than the tests.
const routesFile = "#functions/edge/routes/index.ts";
const { routes } = (await import(routesFile)) as { routes: readonly Operation[] };

let described: Described;
const fetched = async (): Promise<Loose> => (await new Client(inject("edge")).get("/api/openapi.json")).body;
beforeAll(async () => {
  described = new Described(await fetched());
});

/** `get /path` of every operation, with what is said of it. */
const operations = (): [string, Loose][] =>
  Object.entries<Loose>(described.document.paths).flatMap(([path, methods]) =>
    Object.entries<Loose>(methods).map(([method, about]) => [`${method.toUpperCase()} ${path}`, about] as [string, Loose]),
  );

describe("the OpenAPI document", () => {
  it("is without a fault to a linter that knows the format, but for what is so", async () => {
    const config = await createConfig({ extends: ["recommended"] });
    const found = await lintFromString({ source: JSON.stringify(described.document), absoluteRef: "/openapi.json", config });
    expect(found.map(({ ruleId, message }) => `${ruleId}: ${message}`).sort()).toEqual([
      // It has none.
      "info-license: Info object should contain `license` field.",
      // A one-time link leads on (303), or says on a page that it does not work (404).
      "operation-2xx-response: Operation must have at least one `2XX` response.",
    ]);
  });

  it("the linter bites: a reference to nothing and an operation without a description are told", async () => {
    const bent = structuredClone(described.document);
    bent.paths["/api/jobs"].get.responses[200].content["application/json"].schema = { $ref: "#/components/schemas/none" };
    delete bent.paths["/api/jobs"].post.summary;
    const config = await createConfig({ extends: ["recommended"] });
    const found = await lintFromString({ source: JSON.stringify(bent), absoluteRef: "/openapi.json", config });
    expect(found.map(({ ruleId }) => ruleId)).toEqual(expect.arrayContaining(["no-unresolved-refs", "operation-summary"]));
  });

  it("every answer of a route is nothing, a file of a named type, or JSON that says what it holds", () => {
    const bare = Object.entries<Loose>(described.document.paths).flatMap(([path, methods]) =>
      Object.entries<Loose>(methods).flatMap(([method, { responses }]) =>
        Object.entries<Loose>(responses)
          .filter(([status]) => /^2\d\d$/.test(status))
          .filter(([, { content }]) => {
            const schema = content?.["application/json"]?.schema;
            return (
              content?.["application/octet-stream"] || (schema && !schema.type && !schema.properties && schema.$ref?.endsWith("/json"))
            );
          })
          .map(() => `${method.toUpperCase()} ${path}`),
      ),
    );
    // This document.
    expect(bare.sort()).toEqual(["GET /api/openapi.json"]);
  });

  it("what a route reads of an address is described", async () => {
    const folder = new URL("../../functions/edge/", import.meta.url);
    const files = (await readdir(folder, { recursive: true })).filter((name) => name.endsWith(".ts"));
    const texts = await Promise.all(files.map((name) => readFile(new URL(name, folder), "utf8")));
    const reads = texts
      .filter((text) => /URLSearchParams|searchParams/.test(text))
      .flatMap((text) => [...text.matchAll(/(?:query|asked|searchParams)\.(?:get|has)\("([a-z]+)"\)/g)].map(([, name = ""]) => name));
    const said = new Set(routes.flatMap(({ asks = {} }) => Object.keys(asks)));
    expect(reads.length).toBeGreaterThan(10);
    expect([...new Set(reads)].filter((name) => !said.has(name))).toEqual([]);
  });

  it("a route that reads bytes says so", async () => {
    const folder = new URL("../../functions/edge/routes/", import.meta.url);
    const names = (await readdir(folder)).filter((name) => name.endsWith(".ts"));
    const texts = await Promise.all(names.map((name) => readFile(new URL(name, folder), "utf8")));
    const reading = texts.filter((text) => /\bbodyOf\(|request\.(?:body|json|text|arrayBuffer|formData|blob)\b/.test(text));
    expect(reading.length).toBeGreaterThan(4);
    expect(reading.filter((text) => !text.includes('takes: "bytes"'))).toEqual([]);
  });

  it("names every refusal's code once in the shape of a refusal, and under its status", () => {
    const { schemas, responses } = described.document.components;
    expect(schemas.problem.properties.code.enum.toSorted()).toEqual([...refusalCodes].sort());
    expect(Object.values<string[]>(responses.Refused["x-codes"]).flat().sort()).toEqual([...refusalCodes].sort());
    expect(responses.Refused["x-codes"][429]).toContain("too-many-tries");
  });

  it("says of every route that changes something which header it wants, and of every route how one is let in", () => {
    const wanted = { $ref: "#/components/parameters/FromTheApp" };
    for (const [name, { parameters = [], security, "x-who": who }] of operations()) {
      const changes = !name.startsWith("GET ") && who[0] !== "operator";
      expect([name, parameters.some((one: Loose) => one.$ref === wanted.$ref)]).toEqual([name, changes]);
      const ways = who[0] === "nobody" ? [] : who[0] === "operator" ? ["operator"] : ["session", "hostSession"];
      expect([name, security.map((one: object) => Object.keys(one)[0])]).toEqual([name, ways]);
    }
  });

  it("says what each kind of fact holds, so that what the edge refuses does not fit and what it takes does", () => {
    const entry = described.document.components.schemas.sentEntry;
    expect(entry.allOf.length).toBeGreaterThan(40);
    expect(described.document.components.schemas["what-reading-taken"].required).toEqual(["item", "typed", "unit"]);
  });
});

const jpeg = (): Uint8Array => new Uint8Array([0xff, 0xd8, 0xff, 0xe0, ...crypto.getRandomValues(new Uint8Array(64))]);
const pdf = new TextEncoder().encode("%PDF-1.7\n% a paper of our own\n%%EOF\n");

describe("real answers of the edge", () => {
  let company: Company;
  let job: string;
  let phone: Phone;

  beforeAll(async () => {
    company = await newCompany(inject("edge"), inject("operatorKey"));
    for (const client of [company.owner, company.office, company.crew]) described.watch(client);
    ({ job, phone } = await newJob(company));
  });

  const of = async (reply: Promise<{ status: number; body: Loose }>, status: number): Promise<Loose> => {
    const got = await reply;
    expect([got.status, got.status < 400 ? undefined : got.body]).toEqual([status, undefined]);
    return got.body;
  };

  it("are as described: a job from its opening to its record", async () => {
    const { office, crew, people } = company;
    const photo = jpeg();
    const put = () => crew.ask("PUT", `/api/photos/${sha256(photo)}`, { bytes: photo });
    await of(put(), 201);
    await of(put(), 200);
    const entries = await Promise.all([
      phone.entry(job, people.crew, "picture-taken", { item: "footing-seen", photo: sha256(photo), bytes: 68, type: "image/jpeg" }),
      phone.entry(job, people.crew, "reading-taken", { item: "top-below-soil", typed: "4 1/2", unit: "in" }),
      phone.entry(job, people.crew, "covering-announced", { covering: "bury-footing", about: Date.now() + 3_600_000 }),
      phone.entry(job, people.crew, "reading-taken", { item: "no-such-item", typed: "4", unit: "in" }),
    ]);
    const { answers } = await of(crew.post(`/api/jobs/${job}/entries`, { ...batchOf(...entries), sent: Date.now() }), 200);
    expect(answers.map((one: Loose) => one.outcome ?? one.refusal.code)).toEqual(["taken", "taken", "taken", "entry-unknown-item"]);
    await until(
      async () => (await crew.get(`/api/photos/${sha256(photo)}`)).body.state,
      (state) => state === "unreadable",
    );
    const seen = await of(crew.get(`/api/jobs/${job}`), 200);
    expect([seen.findings.length > 0, seen.clearances.length > 0]).toEqual([true, true]);
    const picture = new Uint8Array(await readFile(new URL("../samples/photos/camera-640.jpg", import.meta.url)));
    const at = `/api/photos/${sha256(picture)}`;
    await of(crew.ask("PUT", at, { bytes: picture }), 201);
    await until(
      async () => (await crew.get(at)).body.state,
      (state) => state === "read",
    );
    await of(office.post(`${at}/blurred`, { regions: [{ x: 0, y: 0, width: 500_000, height: 500_000 }], reason: "a face" }), 201);
    for (const which of ["original", "screen", "print"]) await of(office.get(`${at}/${which}`), 200);
    const paths = ["/api/jobs", `/api/jobs/${job}/ledger`, `/api/jobs/${job}/design`, `/api/jobs/${job}/pictures`];
    for (const path of [...paths, "/api/about-to-be-buried", `/api/jobs/${job}/seen-before`, "/api/seen-before", "/api/laid-aside"])
      await of(office.get(path), 200);
    await of(office.post("/api/laid-aside/again", {}), 200);
    await of(office.post(`/api/jobs/${job}/looks`, { picture: entries[0]?.sealed.id, says: "shows it" }), 201);
    const asked = { about: { item: "footing-seen" }, reason: "too dark" };
    await of(office.post(`/api/jobs/${job}/decisions`, { kind: "rework-asked", what: asked, who: { name: "Kim Alder" } }), 201);
    await of(office.post(`/api/jobs/${job}/site`, { latitude: 410_021_000, longitude: -891_204_000, how: "the map" }), 201);
    const came = { item: "footing-seen", photo: sha256(photo), from: "a neighbour", how: "by mail", when: "on Monday" };
    await of(office.post(`/api/jobs/${job}/received`, came), 201);
    const right = await newJob(company);
    await of(office.post(`/api/jobs/${job}/moves`, { to: right.job, entries: [entries[1]?.sealed.id], reason: "wrong yard" }), 200);
    await of(company.owner.get(`/api/rebuild/${job}`), 200);
    await of(company.owner.post(`/api/rebuild/${job}`), 200);
    await of(office.post(`/api/jobs/${job}/afterwards`, { kind: "in-use", what: { since: "2026-05-04", how: "water runs" } }), 201);
    const { record } = await of(office.post(`/api/jobs/${job}/records`, { edition: "customer" }), 201);
    await of(office.get(`/api/jobs/${job}/records`), 200);
    for (const file of ["model", "ledger", "pdf"]) await of(office.get(`/api/records/${record}/${file}`), 200);
    await of(office.post(`/api/records/${record}/releases`, { to: "Dana, by letter" }), 201);
    const { releases } = await of(office.get(`/api/records/${record}/releases`), 200);
    await of(office.post(`/api/records/${record}/releases/${releases[0].release}/end`), 204);
    await of(office.get(`/api/jobs/${job}/calendar`), 200);
    const archive = await office.get(`/api/jobs/${job}/archive`);
    const other = await newCompany(inject("edge"), inject("operatorKey"));
    for (const status of [201, 200]) await of(described.watch(other.office).ask("POST", "/api/archives", { bytes: archive.bytes }), status);
  }, 120_000);

  it("are as described: what the office opens, keeps and is told", async () => {
    const { office, owner, people } = company;
    const { settings, sheets } = await of(office.get("/api/company"), 200);
    await of(office.get(`/api/company/versions/${sheets[0].digest}`), 200);
    await of(office.get(`/api/company/sheets/${sheets[0].name}`), 200);
    await of(office.ask("PUT", "/api/company/settings", { json: { ...settings.content, officeMail: "desk@example.org" } }), 200);
    expect((await office.post("/api/company/sheets", { id: "x" })).status).toBe(422);
    await of(office.post("/api/company/kit-cards", { id: "a-pump", part: "A pump", facts: { lidLoad: "unknown" } }), 201);
    await of(office.get("/api/company/kit-cards/a-pump"), 200);
    await of(office.post("/api/company/instruments", { id: "a-level", title: "Level, 4 ft" }), 201);
    const mark = new TextEncoder().encode(markSvg);
    await of(office.ask("PUT", "/api/company/mark", { bytes: mark }), 201);
    await of(office.get(`/api/company/mark/${sha256(mark)}`), 200);
    await of(owner.post("/api/company/keys"), 201);
    await of(office.get(`/api/companies/${company.company}/keys`), 200);
    await of(office.get("/api/company/ledger"), 200);
    const site = { address: "9 Example Row", heightMark: "nail in the sill" };
    const made = await of(office.post("/api/openings", { title: "Terrace fall", sheet: sheets[0].name, site }), 201);
    await of(office.post(`/api/jobs/${made.job}/particulars`, { order: "PO 8" }), 201);
    const newer = await of(office.post("/api/company/sheets", { ...(tenItems as object), version: 2 }), 201);
    await of(office.post(`/api/jobs/${made.job}/versions`, { digest: newer.digest }), 201);
    const csv = new TextEncoder().encode("number,title\nT-1,Upper fall\n,no number\n");
    await of(office.ask("POST", `/api/tables/jobs?look=1&sheet=${sheets[0].name}`, { bytes: csv }), 200);
    for (const table of ["jobs", "readings", "findings"]) await of(office.get(`/api/tables/${table}`), 200);
    const { sites } = await of(office.get("/api/sites"), 200);
    await of(office.post("/api/sites", { id: sites[0].id, address: "9 Example Row", tieMarks: ["gate post"] }), 201);
    await of(office.post("/api/design", { figures: { staticHead: { typed: "6", unit: "ft" } } }), 200);
    const paper = await PDFDocument.create();
    paper.addPage([400, 600]);
    const bytes = await paper.save();
    await of(office.ask("PUT", `/api/papers/${sha256(bytes)}`, { bytes }), 201);
    await of(office.get("/api/mail"), 200);
    const old = "number,customer,address,part,start,months\nA-2,Kit Lowe,4 Example Lane,Pump,2026-05-01,12\nA-3,X,Y,Pump,no day,12\n";
    await of(office.post("/api/warranties/import", { csv: old, dry: true }), 200);
    await of(office.get("/api/warranties"), 200);
    const to = { address: "dana@example.org" };
    await of(office.post(`/api/jobs/${made.job}/messages`, { kind: "warranty", to, language: "es" }), 200);
    await of(office.get("/api/callbacks"), 200);
    const taught = { id: newId(), kind: "taught", what: { step: "top-of-footing", day: "2026-05-04" } };
    await of(owner.post("/api/company/facts", taught), 201);
    await of(owner.get("/api/company/facts"), 200);
    const { questions } = await of(owner.get("/api/questions"), 200);
    for (const { id } of questions) await of(owner.get(`/api/questions/${id}?from=2026-01-01`), 200);
    await of(owner.get("/api/report"), 200);
    await of(office.get("/api/keeping"), 200);
    const asks = { id: newId(), asks: "data", names: ["Kit Lowe"], day: "2026-05-04" };
    await of(office.post("/api/persons", asks), 201);
    await of(office.get(`/api/persons/${asks.id}`), 200);
    await of(office.get(`/api/persons/${asks.id}/data`), 200);
    const removal = { id: newId(), asks: "removal", names: ["Kit Lowe"], day: "2026-05-04" };
    await of(office.post("/api/persons", removal), 201);
    await of(owner.post(`/api/persons/${removal.id}/hold`, { because: "dispute", until: "2026-06-01" }), 201);
    await of(office.get("/api/persons"), 200);
    await of(office.post(`/api/persons/${asks.id}/answer`, {}), 201);
    expect(people.office).toBeTruthy();
  }, 120_000);

  it("are as described: who is let in, and others", async () => {
    const { office, owner, crew, people } = company;
    const nobody = described.watch(new Client(inject("edge")));
    await of(crew.get("/api/session"), 200);
    await of(owner.get("/api/access"), 200);
    await of(owner.get("/api/people"), 200);
    const { person } = await of(owner.post("/api/people", { name: "Ash Roe", role: "crew" }), 201);
    await of(owner.post(`/api/people/${person}/links`), 201);
    const { digits } = await of(owner.post(`/api/people/${person}/codes`, {}), 201);
    await of(nobody.post("/api/join", { digits }), 204);
    await of(owner.get("/api/codes"), 200);
    await of(owner.get(`/api/people/${people.crew}/access`), 200);
    const { options, origin } = await of(owner.post("/api/passkeys/options"), 200);
    const credential = new Authenticator().make({ origin, party: options.rp.id, challenge: options.challenge });
    await of(owner.post("/api/passkeys", { name: "my phone", credential }), 201);
    await of(nobody.post("/api/sign-in/options"), 200);
    await of(nobody.get("/api/health"), 200);
    await of(nobody.get("/api/ready"), 200);
    const { link } = await of(office.post(`/api/jobs/${job}/others-links`, { step: "top-of-footing", what: "The wiring" }), 201);
    await of(office.get(`/api/jobs/${job}/others-links`), 200);
    const at = link.replace("/others/", "/api/others/");
    await of(nobody.get(at), 200);
    await of(nobody.ask("PUT", `${at}/files/${sha256(pdf)}`, { bytes: pdf, headers: { "content-type": "application/pdf" } }), 201);
    await of(nobody.post(at, { name: "Lou Marsh", did: "outlet set", paper: sha256(pdf) }), 201);
    await of(office.get(`/api/papers/${sha256(pdf)}`), 200);
    const refused = await Promise.all([nobody.get("/api/jobs"), crew.get("/api/codes"), office.get("/api/jobs/none"), nobody.get(at)]);
    expect(refused.map(({ status }) => status)).toEqual([401, 403, 404, 404]);
    expect((await office.ask("POST", "/api/jobs", { json: {} })).status).toBe(400);
    // These end the sessions of whom they are about.
    await of(owner.post(`/api/people/${people.office}/recovery`), 201);
    const headers = { authorization: `Operator ${inject("operatorKey")}` };
    const founding = { name: "Alder Works", zone: "America/Denver", units: "metric", language: "es", owner: { name: "Pat Reed" } };
    await of(nobody.ask("POST", "/api/companies", { json: founding, headers }), 201);
    const recovering = { json: { person: people.owner }, headers };
    await of(nobody.ask("POST", `/api/companies/${company.company}/recovery`, recovering), 201);
    await of(nobody.ask("GET", "/api/metrics", { headers }), 200);
  });

  it("fit their shapes, all of them; and every route that answers JSON was asked, but for those named here", () => {
    expect(described.faults).toEqual([]);
    expect(described.shaped().filter((name) => !described.seen.has(name))).toEqual([
      // Needs a second database: tests/faults/company-moves.
      "POST /api/companies/{company}/move 200",
      // Needs both entries as a phone seals them: edge-move.
      "POST /api/jobs/{job}/move 200",
      // The document itself, which all of this is about.
      "GET /api/openapi.json 200",
    ]);
  });
});
