import { beforeAll, describe, expect, inject, it } from "vitest";
import type { DesignLine, Expectation } from "#core/job/index.ts";
import { batchOf, type Company, newCompany, newJob } from "../helpers/edge.ts";
import { readWords } from "../helpers/pdf.ts";
import { inch, metric, parabola } from "../unit/design/planned.ts";

const figure = (typed: string, unit: string) => ({ typed, unit });

type Written = Readonly<Record<string, string>>;
/** `4 ft` as the office types it: the number, and the unit beside it. */
const typedAll = (all: Written) =>
  Object.fromEntries(
    Object.entries(all).map(([name, text]) => {
      const [, number = "", unit = "1"] = /^([\d./ -]+?)\s*([\p{L}%°].*)?$/u.exec(text) ?? [];
      return [name, figure(number, unit)];
    }),
  );

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
      const { pages, title, text } = await readWords(paper.bytes);
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

  it("answers inches and metric alike: the same states and advice, the same figures", async () => {
    const ask = async (from: { figures: Written; card: Written }, pumpCurve: string) => {
      const kitCards = [{ part: "a part", facts: { ...typedAll(from.card), pumpCurve, pipeKind: "rigid" } }];
      const { status, body } = await company.office.post("/api/design", { figures: typedAll(from.figures), kitCards });
      expect(status).toBe(200);
      return body as { lines: readonly DesignLine[]; expectations: readonly Expectation[] };
    };
    // H = 24 − 0.004 q² ft in L/min and m, as a card prints it
    const card = [0, 10, 20, 30, 40, 50, 60, 70, 77].map((q) => [q * 3.785411784, (24 - 0.004 * q * q) * 0.3048] as const);
    const metricCurve = card.map(([flow, head]) => `${flow.toFixed(1)} L/min ${head.toFixed(3)} m`).join("; ");
    const [one, two] = [await ask(inch, parabola), await ask(metric, metricCurve)];
    const shape = ({ lines }: typeof one) =>
      lines.map(({ id, state, says, advice }) => [id, state, says.key, advice.map(({ key, figures: { size } }) => [key, size])]);
    expect(shape(two)).toEqual(shape(one));
    expect(one.lines.filter(({ state }) => state === "not known")).toEqual([]);
    let compared = 0;
    for (const { id, value, doubt = 0 } of one.expectations) {
      const other = two.expectations.find((expectation) => expectation.id === id);
      if (value === undefined) expect(other?.value, id).toBeUndefined();
      else {
        // 0.2 % for the metric curve and width, which are rounded; the doubt of a typed size goes by its last digit
        expect(Math.abs((other?.value ?? Number.NaN) - value), id).toBeLessThanOrEqual(Math.max(2, 0.002 * Math.abs(value), 0.1 * doubt));
        compared++;
      }
    }
    expect(compared).toBeGreaterThan(30);
  });

  it("advises another size where the bore is halved", async () => {
    const sizes = async (pipeSize: string) =>
      (
        await flowLine(pipeSize, { figures: { ...figures, pipeSize: figure(pipeSize, "in"), flowWanted: figure("58", "gpm") } })
      )?.advice.map(({ figures: { size } }) => size);
    expect((await sizes("2"))?.[0]).toBe("2-1/2 in");
    expect((await sizes("1"))?.[0]).toBe("1-1/4 in");
  });

  it("names the figures that are missing, and works out the rest", async () => {
    const { status, body } = await company.office.post("/api/design", {
      figures: { basinLength: figure("60", "in"), basinWidth: figure("48", "in"), basinDepth: figure("24", "in") },
      kitCards: [{ part: "a basin", facts: { basinWeight: figure("75", "lb") } }],
    });
    expect(status).toBe(200);
    const [lines, all] = [body.lines as DesignLine[], body.expectations as Expectation[]];
    expect(lines.map(({ id, state }) => [id, state])).toEqual(
      ["flow", "velocity", "reserve", "cord", "float", "stone"].map((id) => [id, "not known"]),
    );
    expect(lines[4]?.needs).toEqual(["rainExpected"]);
    expect(lines[5]?.needs).toEqual(["stoneDepth"]);
    // 12 × 75 lb / (62.3 lb/ft³ × 20 ft²) = 0.7223 in
    expect(Math.abs((all.find(({ id }) => id === "floatsOn")?.value ?? 0) / 25_400 - 0.7223)).toBeLessThan(0.001);
    expect(all.find(({ id }) => id === "flow")?.needs).toContain("pumpCurve");
  });

  it("is in the document of the interface, with its states and what an answer has", async () => {
    const { body } = await company.office.get("/api/openapi.json");
    // what an operation names stands among the shapes, and may name others in its turn
    const texts = [JSON.stringify(body.paths["/api/design"].post)];
    const named = new Set<string>();
    for (const text of texts)
      for (const [, name = ""] of text.matchAll(/"#\/components\/schemas\/([^"]+)"/g))
        if (!named.has(name)) {
          named.add(name);
          texts.push(JSON.stringify(body.components.schemas[name]));
        }
    const answer = texts.join("\n");
    for (const word of ["nothing is stored", "too close to call", "ask the electrician", "contributors", "kitCards"])
      expect(answer).toContain(word);
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
