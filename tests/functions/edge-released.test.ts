import { beforeAll, describe, expect, inject, it } from "vitest";
import { archiveOf, chained, jsonBytes, packed } from "../helpers/archive.ts";
import { Client, type Company, type Loose, newCompany, newJob } from "../helpers/edge.ts";

let company: Company;
beforeAll(async () => {
  company = await newCompany(inject("edge"), inject("operatorKey"));
});
const nobody = (): Client => new Client(inject("edge"));
const text = (bytes: Uint8Array): string => new TextDecoder().decode(bytes);

describe("a record that is released", () => {
  it("is a second act beside issuing: told in the job, opened by its link without sign-in, until the office ends it", async () => {
    const { job } = await newJob(company);
    const { record, pdf } = (await company.office.post(`/api/jobs/${job}/records`, { edition: "customer" })).body;
    const kinds = async (): Promise<readonly string[]> =>
      (await company.office.get(`/api/jobs/${job}/ledger`)).body.entries.map((one: Loose) => one.envelope.kind);
    expect(await kinds()).not.toContain("record-released");
    expect((await company.office.get(`/api/records/${record}/releases`)).body).toEqual({ releases: [] });

    const made = await company.office.post(`/api/records/${record}/releases`, { to: "Dana Ashford, by letter" });
    expect(made).toMatchObject({ status: 201, body: { link: expect.stringMatching(/^\/released\/[\w-]{43}$/) } });
    const { link } = made.body;
    expect((await kinds()).at(-1)).toBe("record-released");
    const said = (await company.office.get(`/api/jobs/${job}/ledger`)).body.entries.at(-1).body.what.content;
    expect(said).toEqual({ version: 1, to: "Dana Ashford, by letter" });

    const page = await nobody().get(link);
    expect(page.status).toBe(200);
    expect(page.headers.get("content-type")).toBe("text/html; charset=utf-8");
    expect(page.headers.get("content-security-policy")).toContain("default-src 'none'");
    expect([page.headers.get("cache-control"), page.headers.get("x-robots-tag")]).toEqual(["no-store", "noindex"]);
    const model = (await company.office.get(`/api/records/${record}/model`)).body;
    for (const words of [model.title.job, model.standing, model.proof.head, model.words["how-to-check"]])
      expect(text(page.bytes)).toContain(words);
    expect(text(page.bytes)).not.toContain("<script");
    expect(Buffer.compare((await nobody().get(`${link}/pdf`)).bytes, (await company.office.get(pdf)).bytes)).toBe(0);
    expect(await nobody().get(`${link}/pictures/${"0".repeat(64)}`)).toMatchObject({ status: 404, body: { code: "photo-unknown" } });

    const { releases } = (await company.office.get(`/api/records/${record}/releases`)).body;
    expect(releases).toMatchObject([{ to: "Dana Ashford, by letter" }]);
    // what is kept opens nothing
    expect(JSON.stringify(releases)).not.toContain(link.slice("/released/".length));
    const end = `/api/records/${record}/releases/${releases[0].release}/end`;
    expect((await company.crew.post(end)).status).toBe(403);
    expect((await company.office.post(end)).status).toBe(204);
    expect(await company.office.post(end)).toMatchObject({ status: 404, body: { code: "release-ended" } });
    const over = await nobody().get(link);
    expect([over.status, text(over.bytes).includes(model.title.job)]).toEqual([404, false]);
    for (const part of ["pdf", `pictures/${"0".repeat(64)}`])
      expect(await nobody().get(`${link}/${part}`)).toMatchObject({ status: 404, body: { code: "release-ended" } });
    expect((await company.office.get(`/api/records/${record}/releases`)).body.releases[0].ended).toEqual(expect.any(Number));
  });

  it("that came with an archive and says nothing that a page can be made of opens as it was printed", async () => {
    const ledger = await chained(`job-${crypto.randomUUID().slice(0, 8)}`, [
      { kind: "job-opened", what: { title: "Elm Street 4", zone: "UTC", language: "en", units: "inch" } },
    ]);
    const { list, files } = archiveOf(ledger);
    const bytes = packed([{ name: "list", bytes: jsonBytes(list) }, ...files]);
    const came = await company.office.ask("POST", "/api/archives", { bytes });
    expect([came.status, came.body.records]).toEqual([201, 1]);
    const { record } = (await company.office.get(`/api/jobs/${ledger.job}/records`)).body.records[0];
    const { link } = (await company.office.post(`/api/records/${record}/releases`, { to: "Dana" })).body;
    const opened = await nobody().get(link);
    expect([opened.status, opened.headers.get("location")]).toEqual([303, `${link}/pdf`]);
    expect(await nobody().get(`${link}/pictures/${"0".repeat(64)}`)).toMatchObject({ status: 422, body: { code: "record-unreadable" } });
    // a record is issued all the same, without what changed since
    const next = await company.office.post(`/api/jobs/${ledger.job}/records`, { edition: "customer" });
    expect([next.status, next.body.version]).toEqual([201, 2]);
  }, 60_000);

  it("is the customer's edition alone, and none of another company", async () => {
    const { job } = await newJob(company);
    const { record } = (await company.office.post(`/api/jobs/${job}/records`, { edition: "company" })).body;
    expect(await company.office.post(`/api/records/${record}/releases`, { to: "Dana" })).toMatchObject({
      status: 409,
      body: { code: "release-company-edition" },
    });
    expect((await company.crew.post(`/api/records/${record}/releases`, { to: "Dana" })).status).toBe(403);
    const other = await newCompany(inject("edge"), inject("operatorKey"));
    expect(await other.office.post(`/api/records/${record}/releases`, { to: "x" })).toMatchObject({ body: { code: "record-unknown" } });
    expect(await other.office.get(`/api/records/${record}/releases`)).toMatchObject({ body: { code: "record-unknown" } });
    expect((await nobody().get("/released/nothing")).status).toBe(404);
  });
});
