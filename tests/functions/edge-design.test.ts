import { beforeAll, describe, expect, inject, it } from "vitest";
import type { DesignLine, Expectation } from "#core/job/index.ts";
import { batchOf, type Company, newCompany, newJob } from "../helpers/edge.ts";
import { readPdf } from "../helpers/pdf.ts";

const figure = (typed: string, unit: string) => ({ typed, unit });

describe("the design of a job", () => {
  let company: Company;
  let path: string;
  let before: { expectations: readonly Expectation[]; lines: readonly DesignLine[] };
  beforeAll(async () => {
    company = await newCompany(inject("edge"), inject("operatorKey"));
    const { job, phone } = await newJob(company);
    path = `/api/jobs/${job}/design`;
    before = (await company.crew.get(path)).body;
    const figures = { basinLength: figure("60", "in"), basinWidth: figure("48", "in"), basinDepth: figure("24", "in") };
    const set = await phone.entry(job, company.people.office, "design-set", { figures, switches: {} });
    expect((await company.office.post(`/api/jobs/${job}/entries`, batchOf(set))).status).toBeLessThan(300);
  });

  it("without figures names what each line waits for", () => {
    expect(before.lines.map(({ state }) => state)).toEqual(before.lines.map(() => "not known"));
    expect(before.lines.filter(({ needs = [] }) => needs.length === 0)).toEqual([]);
    expect(before.expectations.find(({ id }) => id === "basinGross")?.needs).toContain("basinDepth");
  });

  it("goes by the newest design, for every role alike", async () => {
    const answers = [await company.crew.get(path), await company.office.get(path), await company.owner.get(path)];
    for (const { status, body } of answers) {
      expect(status).toBe(200);
      expect(body.head.number).toBe(3);
      // 60 x 48 in = 2880 in³ an inch, 12.468 gal of 3785.411784 ml
      const inch = (body.expectations as Expectation[]).find(({ id }) => id === "waterPerInch");
      expect(Math.abs((inch?.value ?? 0) - (2880 / 231) * 3785.411784)).toBeLessThan(2);
    }
  });

  it("prints as one page for the office and the company owner, and not for the crew", async () => {
    for (const client of [company.office, company.owner]) {
      const paper = await client.get(`${path}/pdf`);
      expect(paper.status).toBe(200);
      expect(paper.headers.get("content-type")).toBe("application/pdf");
      expect(paper.headers.get("cache-control")).toBe("no-store");
      const { pages, title, text } = await readPdf(paper.bytes);
      expect(pages).toHaveLength(1);
      expect(title).toBe("Design check: Elm Street 4");
      for (const words of ["Basin: length", "60 in", "Will the empty basin float tonight?", "entry 3"]) expect(text).toContain(words);
    }
    expect(await company.crew.get(`${path}/pdf`)).toMatchObject({ status: 403, body: { code: "role-not-allowed" } });
  });

  it("prints the newest design, and writes nothing into the job", async () => {
    const head = (await company.office.get(path)).body.head;
    await company.office.get(`${path}/pdf`);
    expect((await company.office.get(path)).body.head).toEqual(head);
  });
});

describe("a design that is no job yet", () => {
  let company: Company;
  beforeAll(async () => {
    company = await newCompany(inject("edge"), inject("operatorKey"));
  });
  const figures = {
    staticHead: figure("6", "ft"),
    pipeRun: figure("40", "ft"),
    elbows90: figure("4", "1"),
    flowWanted: figure("50", "gpm"),
  };
  const pump = {
    part: "a pump",
    facts: { pumpCurve: "0 gpm 24 ft; 20 gpm 22.4 ft; 40 gpm 17.6 ft; 60 gpm 9.6 ft; 77 gpm 0 ft", lidLoad: "unknown" },
  };
  const flowLine = async (pipeSize: string, more: object = {}) => {
    const asked = { figures: { ...figures, pipeSize: figure(pipeSize, "in") }, kitCards: [pump], ...more };
    const { status, body } = await company.office.post("/api/design", asked);
    expect(status).toBe(200);
    return (body.lines as DesignLine[])[0];
  };

  it("is answered as a job's is, by figures and kit cards that are sent along, and nothing is stored", async () => {
    const before = [(await company.office.get("/api/jobs")).body, (await company.office.get("/api/company/ledger")).body];
    const large = await flowLine("2");
    expect(large?.state).toBe("enough");
    const small = await flowLine("1");
    expect(small).toMatchObject({ state: "not enough", says: { key: "design.flow.not-enough" } });
    expect(small?.advice.map(({ figures: { size } }) => size)).toContain("2 in");
    expect([(await company.office.get("/api/jobs")).body, (await company.office.get("/api/company/ledger")).body]).toEqual(before);
  });

  it("knows the switches by the tolerance sheet's ids", async () => {
    const ask = async (switches: object) =>
      (await company.owner.post("/api/design", { figures: { ...figures, pipeSize: figure("2", "in") }, switches, kitCards: [pump] })).body;
    const drains = (body: { expectations: Expectation[] }) => body.expectations.find(({ id }) => id === "drainBack")?.value ?? 0;
    const [open, closed] = [drains(await ask({})), drains(await ask({ "check-valve": true }))];
    expect(open).toBeGreaterThan(10_000);
    expect(closed).toBeLessThan(open / 10);
  });

  it("says where a figure cannot be read, in the line that it stops", async () => {
    expect(await flowLine("2", { kitCards: [{ part: "a pump", facts: { pumpCurve: "strong" } }] })).toMatchObject({
      state: "not known",
      refusal: { code: "pump-curve-text" },
    });
  });

  it.each([
    ["nothing", {}],
    ["a figure without its unit", { figures: { pipeRun: { typed: "40" } } }],
    ["a number that was not typed", { figures: { pipeRun: 40 } }],
    ["more than is asked for", { figures, more: true }],
    ["sixty-one kit cards", { figures, kitCards: Array.from({ length: 61 }, () => pump) }],
  ])("refuses %s", async (_, asked) => {
    expect(await company.office.post("/api/design", asked)).toMatchObject({ status: 400, body: { code: "request-shape" } });
  });

  it("is not for the crew", async () => {
    expect(await company.crew.post("/api/design", { figures })).toMatchObject({ status: 403, body: { code: "role-not-allowed" } });
  });
});
