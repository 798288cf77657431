import { beforeAll, describe, expect, inject, it } from "vitest";
import { batchOf, type Company, type Loose, newCompany, newId, newJob, tenItems } from "../helpers/edge.ts";
import { verifyLedger } from "../helpers/verifier.ts";

let company: Company;
beforeAll(async () => {
  company = await newCompany(inject("edge"), inject("operatorKey"));
});

/** The sheet of ten items with another least depth of the hole: 34 3/4 in where it was 33. */
const deeper = (): Loose => {
  const sheet = structuredClone(tenItems) as Loose;
  sheet.version = 2;
  sheet.checks = sheet.checks.map((check: Loose) => (check.id === "hole-depth" ? { ...check, aim: 914_400, lower: 882_650 } : check));
  return sheet;
};
const saved = (json: unknown, from?: string) =>
  company.office.ask("POST", "/api/company/sheets", { json, ...(from === undefined ? {} : { headers: { "if-match": `"${from}"` } }) });

describe("versions of the company's things", () => {
  it("are listed newest first with when and by whom, each readable for good", async () => {
    const first = (await saved(tenItems)).body;
    const second = (await saved(deeper(), first.digest)).body;
    const list = await company.crew.get("/api/company/sheets/gate-post");
    expect(list.status).toBe(200);
    expect(list.body.versions.map((one: Loose) => [one.number, one.digest, one.person])).toEqual([
      [second.number, second.digest, company.people.office],
      [first.number, first.digest, company.people.office],
    ]);
    expect(Math.abs(Date.now() - list.body.versions[0].at)).toBeLessThan(60_000);
    expect((await company.crew.get(`/api/company/versions/${first.digest}`)).body.content).toEqual(tenItems);
    expect(await company.office.get("/api/company/sheets/none-such")).toMatchObject({ status: 404, body: { code: "version-unknown" } });
    expect(await company.office.get("/api/company/kit-cards/gate-post")).toMatchObject({ status: 404, body: { code: "version-unknown" } });
  });

  it("a version made from one that is no longer the newest is refused, and changes nothing", async () => {
    const card = (part: string, from?: string) =>
      company.office.ask("POST", "/api/company/kit-cards", {
        json: { id: "pump", part, facts: { pumpPower: { typed: "140", unit: "W" } } },
        ...(from === undefined ? {} : { headers: { "if-match": `"${from}"` } }),
      });
    const first = (await card("Pump A")).body;
    expect((await card("Pump B", first.digest)).status).toBe(201);
    const late = await card("Pump C", first.digest);
    expect(late).toMatchObject({ status: 412, body: { code: "version-not-newest" } });
    expect(late.body.detail).toContain("Somebody saved another version meanwhile");
    expect((await company.office.get("/api/company/kit-cards/pump")).body.versions).toHaveLength(2);
    const sheets = (await company.office.get("/api/company/sheets/gate-post")).body.versions;
    expect(await saved({ ...deeper(), version: 3 }, sheets.at(-1).digest)).toMatchObject({ status: 412 });
  });
});

describe("moving a job to another version", () => {
  it("is an entry of its ledger; its findings follow, and what it had before stays in the ledger", async () => {
    const { job, phone, sheet } = await newJob(company);
    const { crew } = company.people;
    const entries = [
      await phone.entry(job, crew, "tag-named", { set: "gate-post", tag: "left", hiddenBy: "pour-concrete" }),
      await phone.entry(job, crew, "reading-taken", { item: "hole-deep", tag: "left", typed: "34 0/16", unit: "in" }),
    ];
    expect((await company.crew.post(`/api/jobs/${job}/entries`, batchOf(...entries))).status).toBe(200);
    const depth = async (): Promise<Loose> =>
      (await company.office.get(`/api/jobs/${job}`)).body.findings.find((one: Loose) => one.check === "hole-depth");
    const before = await depth();
    const { digest } = (await saved({ ...deeper(), version: 4 })).body;
    const id = newId();
    const moved = await company.office.post(`/api/jobs/${job}/versions`, { id, digest });
    expect(moved).toMatchObject({ status: 201, body: { entry: id } });
    expect((await company.office.post(`/api/jobs/${job}/versions`, { id, digest })).body).toEqual(moved.body);
    // 34 in lies 3/4 in under what the newer sheet asks for and 1 in over what the older one did; U is 0.58 in
    expect(before.verdict).toBe("within");
    expect(await depth()).toMatchObject({ verdict: "outside", lower: 882_650 });
    const ledger = await company.office.get(`/api/jobs/${job}/ledger`);
    expect(ledger.body.versions.map((one: Loose) => one.digest).sort()).toEqual([sheet, digest].sort());
    expect(ledger.body.entries.at(-1).envelope.kind).toBe("version-taken-over");
    expect(verifyLedger(new TextDecoder().decode(ledger.bytes)).faults).toEqual([]);
    expect(await company.office.post(`/api/jobs/${job}/versions`, { digest })).toMatchObject({
      status: 409,
      body: { code: "version-held" },
    });
    // and back again: the older version is there for as long as the company is
    expect((await company.office.post(`/api/jobs/${job}/versions`, { digest: sheet })).status).toBe(201);
    expect(await depth()).toMatchObject({ verdict: "within" });
  });

  it("refuses what is no version of a sheet or a kit card, and the crew", async () => {
    const { job } = await newJob(company);
    const { settings } = (await company.office.get("/api/company")).body;
    for (const digest of [settings.digest, "0123456789abcdef".repeat(4)])
      expect(await company.office.post(`/api/jobs/${job}/versions`, { digest })).toMatchObject({
        status: 409,
        body: { code: "entry-unknown-version" },
      });
    expect(await company.crew.post(`/api/jobs/${job}/versions`, { digest: settings.digest })).toMatchObject({ status: 403 });
  });
});
