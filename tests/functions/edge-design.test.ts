import { beforeAll, describe, expect, inject, it } from "vitest";
import type { DesignLine, Expectation } from "#core/job/index.ts";
import { batchOf, type Company, newCompany, newJob } from "../helpers/edge.ts";

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
});
