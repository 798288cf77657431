import { beforeAll, describe, expect, inject, it } from "vitest";
import type { QuestionAnswer } from "#core/wire/index.ts";
import { rowsIn } from "../helpers/database.ts";
import { batchOf, type Company, newCompany, newJob, until } from "../helpers/edge.ts";
import { readPdf } from "../helpers/pdf.ts";

let company: Company;
let job: string;
const get = (path: string) => company.owner.get(`/api/questions${path}`);
const answer = async (id: string, query = ""): Promise<QuestionAnswer> => (await get(`/${id}${query}`)).body;

beforeAll(async () => {
  company = await newCompany(inject("edge"), inject("operatorKey"));
  const made = await newJob(company);
  job = made.job;
  const crew = company.people.crew;
  const entries = [
    await made.phone.entry(job, crew, "note-for-record", { text: "sun" }),
    await made.phone.entry(job, crew, "note-for-record", { text: "dry" }),
  ];
  expect((await company.crew.post(`/api/jobs/${job}/entries`, batchOf(...entries))).status).toBe(200);
});

/** A key of the dictionary that has no sentence is shown as it is. */
const isKey = (text: string): boolean => /^[a-z]+(-[a-z]+)*\.[a-z]+(-[a-z]+)*$/.test(text);
const texts = ({ view }: QuestionAnswer): readonly string[] => [
  view.title,
  view.decides,
  view.tooFew,
  view.held,
  ...view.says,
  ...view.signals,
  ...view.counted,
  ...view.pictures.flatMap((one) => [one.title, one.x.label, one.y.label, ...one.key.map(({ says }) => says)]),
  ...view.tables.flatMap(({ title, heads }) => [title, ...heads.map(({ text }) => text)]),
];

describe("the company owner's questions", () => {
  it("are listed with the decision that each serves, and each is answered in words", async () => {
    const { questions } = (await get("")).body as { questions: { id: string; title: string; decides: string }[] };
    expect(questions.length).toBe(14);
    for (const { id, title, decides } of questions) {
      expect(decides.length).toBeGreaterThan(30);
      const told = await answer(id);
      expect(told.view.title).toBe(title);
      expect([told.jobs, told.behind]).toEqual([1, 0]);
      expect(texts(told).filter(isKey)).toEqual([]);
    }
  });

  it("say too few to tell of one job before anything else", async () => {
    const told = await answer("first-time-right");
    expect(told.view.tooFew).toContain("1 job; from 12 on");
    expect(told.answer.signals).toEqual([]);
  });

  it("read what was entered since, and each job's rows are rewritten alone", async () => {
    const rows = () =>
      rowsIn<{ part: string; number: number }>(
        inject("stackDirectory"),
        "observed",
        "SELECT part, number FROM observed WHERE job = ? ORDER BY part",
        job,
      );
    const other = await newJob(company);
    await until(
      async () => (await answer("cost")).jobs,
      (jobs) => jobs === 2,
    );
    expect(rows().map(({ part, number }) => `${part} ${number}`)).toEqual(
      ["callbacks", "coverings", "findings", "job", "parts", "pictures", "readings", "reworks"].map((part) => `${part} 4`),
    );
    expect((await answer("cost", "?from=2020-01-01&to=2020-02-01")).view.counted[0]).toBe("Jobs: 0.");
    expect((await company.office.get(`/api/rebuild/${other.job}`)).body.same).toBe(true);
  });

  it("go by what the company keeps about itself, and no more by what was taken back", async () => {
    const enter = (id: string, kind: string, what: object) => company.owner.post("/api/company/facts", { id, kind, what });
    const judged = async (): Promise<unknown> => (await answer("taught")).answer.says.at(-1)?.figures.taught;
    expect((await enter("taught-1", "taught", { step: "dig-hole", day: "2026-11-02" })).status).toBe(201);
    expect(await judged()).toBe(1);
    expect(await enter("back-0", "taken-back", { entry: "no-such" })).toMatchObject({ status: 422, body: { code: "entry-unknown-entry" } });
    expect(await company.crew.post("/api/company/facts", { id: "back-1", kind: "taken-back", what: { entry: "taught-1" } })).toMatchObject({
      status: 403,
      body: { code: "role-not-allowed" },
    });
    expect((await enter("back-2", "taken-back", { entry: "taught-1", reason: "the wrong day" })).status).toBe(201);
    expect(await judged()).toBe(0);
    const { facts } = (await company.office.get("/api/company/facts")).body;
    expect(facts.map(({ id, kind }: { id: string; kind: string }) => `${id} ${kind}`)).toEqual(["taught-1 taught", "back-2 taken-back"]);
  });

  it("are the company's own: another company counts none of its jobs", async () => {
    const others = await newCompany(inject("edge"), inject("operatorKey"));
    expect((await others.owner.get("/api/questions/first-time-right")).body).toMatchObject({ jobs: 0, behind: 0 });
  });

  it("what a question is asked with is judged, with its place", async () => {
    expect(await get("/no-such-question")).toMatchObject({ status: 404, body: { code: "question-unknown" } });
    expect(await get("/cost?from=soon")).toMatchObject({ status: 400, body: { place: "from" } });
    expect(await get("/sampling?lot=40&looked=50&off=0")).toMatchObject({ status: 400, body: { place: "looked" } });
    // the hypergeometric bound of the issue: nothing found in 5 of 40, up to 17 could still be off
    const told = await answer("sampling", "?lot=40&looked=5&off=0");
    expect(told.view.says.join(" ")).toMatch(/\b17\b/);
  });

  it("give their tables whole as CSV, and the report of a month as a tagged PDF", async () => {
    const csv = await get("/first-time-right/table?table=first-time-right-steps");
    expect(csv.headers.get("content-type")).toContain("text/csv");
    const [head = ""] = new TextDecoder().decode(csv.bytes).split("\r\n");
    // nothing is asked yet: no share has ends
    expect(head).toBe("About,Asked,Right,Not right,Too close to call,Nothing entered,Share right (0-1),note");
    const report = await company.owner.get("/api/report");
    expect([report.status, report.headers.get("content-type")]).toEqual([200, "application/pdf"]);
    const read = await readPdf(report.bytes);
    expect(read.text).toContain("What the jobs say");
    expect(read.structure.get("H2")).toBe(15);
    expect((await company.owner.get("/api/report?month=2199-01")).body).toMatchObject({ place: "month" });
    expect(read.text).not.toContain("read on");
    // a month that is past says when the ledgers were read, once for the whole report
    const past = await readPdf((await company.owner.get("/api/report?month=2026-01")).bytes);
    expect(past.text.replaceAll(/\s+/g, " ").match(/read on .{6,20} and counted to 31 January 2026/g)?.length).toBe(1);
    expect((await answer("cost", "?to=2026-01-31")).view.counted.at(-1)).toMatch(
      /^Counted to 31 January 2026 from the ledgers as they stood on /,
    );
  });
});
