import { beforeAll, describe, expect, inject, it } from "vitest";
import { batchOf, type Company, type Loose, newCompany, newJob, sha256 } from "../helpers/edge.ts";
import { verifyLedger } from "../helpers/verifier.ts";

let company: Company;
beforeAll(async () => {
  company = await newCompany(inject("edge"), inject("operatorKey"));
});

describe("records", () => {
  it("issues the customer's edition: printed, kept with its model and ledger, and told in the job", async () => {
    const { job, phone } = await newJob(company);
    const { crew, office } = company.people;
    const named = await phone.entry(job, crew, "note-for-record", { text: "stone by the drive" }, { who: { name: "Pat Moor" } });
    const own = await phone.entry(job, office, "note-for-office", { text: "call them on Monday" });
    await company.crew.post(`/api/jobs/${job}/entries`, batchOf(named));
    await company.office.post(`/api/jobs/${job}/entries`, batchOf(own));
    const head = (await company.office.get(`/api/jobs/${job}`)).body.head;
    const issued = await company.office.post(`/api/jobs/${job}/records`, { edition: "customer" });
    expect(issued).toMatchObject({ status: 201, body: { version: 1, edition: "customer" } });
    const { record, pdf, bytes, pages, sha256: digest } = issued.body;
    const paper = await company.office.get(pdf);
    expect(paper.headers.get("content-type")).toBe("application/pdf");
    expect([sha256(paper.bytes), paper.bytes.length, pages > 0]).toEqual([digest, bytes, true]);
    const ledger = await company.office.get(`/api/records/${record}/ledger`);
    const text = new TextDecoder().decode(ledger.bytes);
    expect(verifyLedger(text)).toMatchObject({
      ok: true,
      withheld: [
        { number: 3, part: "who", reason: "edition" },
        { number: 4, part: "what", reason: "edition" },
      ],
    });
    expect(text).not.toMatch(/Pat Moor|call them on Monday/);
    expect(ledger.body.head).toEqual(head);
    const model = (await company.office.get(`/api/records/${record}/model`)).body;
    expect(model).toMatchObject({ format: 1, edition: "customer", title: { job: "Elm Street 4", version: 1 }, proof: { head: head.hash } });
    const after = (await company.office.get(`/api/jobs/${job}/ledger`)).body;
    expect(after.entries.at(-1).envelope.kind).toBe("record-issued");
    expect(after.entries.at(-1).body.what.content).toMatchObject({ version: 1, head, edition: "customer" });
    const second = await company.office.post(`/api/jobs/${job}/records`, { edition: "company" });
    expect(second.body).toMatchObject({ version: 2, edition: "company" });
    // a version after the first says what is otherwise: here the edition, and the entry that told of the first
    const { changed } = (await company.office.get(`/api/records/${second.body.record}/model`)).body;
    expect(changed).toMatchObject({
      title: "Changed since version 1",
      lines: [{ label: "Edition", text: "was Customer's edition; now Company's edition" }],
    });
    expect(changed.says[1]).toBe("Entries made since: 1 (numbers 5 to 5).");
    expect(model.changed).toBeUndefined();
    const whole = await company.office.get(`/api/records/${second.body.record}/ledger`);
    expect(verifyLedger(new TextDecoder().decode(whole.bytes))).toMatchObject({ ok: true, withheld: [] });
    const list = (await company.office.get(`/api/jobs/${job}/records`)).body.records;
    expect(list.map((one: Loose) => [one.version, one.edition, one.head.number])).toEqual([
      [1, "customer", 4],
      [2, "company", 5],
    ]);
  });

  it("is in the language and on the paper of its receiver where these are given", async () => {
    const { job } = await newJob(company);
    const issued = await company.office.post(`/api/jobs/${job}/records`, { edition: "customer", language: "es", paper: "a4" });
    const model = (await company.office.get(`/api/records/${issued.body.record}/model`)).body;
    expect(model).toMatchObject({ language: "es", paper: "a4", title: { record: "Registro de lo enterrado" } });
    const own = await company.office.post(`/api/jobs/${job}/records`, { edition: "customer" });
    expect((await company.office.get(`/api/records/${own.body.record}/model`)).body).toMatchObject({ language: "en", paper: "letter" });
    expect((await company.office.post(`/api/jobs/${job}/records`, { edition: "customer", language: "xx" })).status).toBe(400);
  });

  it("leaves what was filed here by mistake out of the customer's edition", async () => {
    const [wrong, right] = [await newJob(company), await newJob(company)];
    const entry = await wrong.phone.entry(wrong.job, company.people.crew, "answered", { item: "lines-asked", choice: "it-is" });
    await company.crew.post(`/api/jobs/${wrong.job}/entries`, batchOf(entry));
    const entries = [{ id: entry.sealed.id, digest: entry.digest }];
    const { id, kind, author, run, made } = entry.sealed;
    const moved = [{ id, kind, author: { ...author }, run, made, what: { item: "lines-asked", choice: "it-is" } }];
    const { office } = company.people;
    const outEntry = await wrong.phone.entry(wrong.job, office, "moved-out", { entries, to: right.job, reason: "r" });
    const inEntry = await wrong.phone.entry(right.job, office, "moved-in", { from: wrong.job, reason: "r", entries: moved });
    const body = { to: right.job, entries, reason: "r", outEntry, inEntry };
    expect((await company.office.post(`/api/jobs/${wrong.job}/move`, body)).status).toBe(200);
    const { record } = (await company.office.post(`/api/jobs/${wrong.job}/records`, { edition: "customer" })).body;
    const ledger = await company.office.get(`/api/records/${record}/ledger`);
    expect(verifyLedger(new TextDecoder().decode(ledger.bytes)).withheld).toEqual([{ number: 3, part: "what", reason: "wrong-job" }]);
  });

  it("two records asked for at once get two versions", async () => {
    const { job } = await newJob(company);
    const answers = await Promise.all([1, 2].map(() => company.office.post(`/api/jobs/${job}/records`, { edition: "customer" })));
    expect(answers.map(({ body }) => body.version).sort()).toEqual([1, 2]);
  });

  it("refuses an edition that there is none of, and files of a record that never was", async () => {
    const { job } = await newJob(company);
    expect((await company.office.post(`/api/jobs/${job}/records`, { edition: "press" })).status).toBe(400);
    expect(await company.office.get("/api/records/none/pdf")).toMatchObject({ status: 404, body: { code: "record-unknown" } });
  });
});
