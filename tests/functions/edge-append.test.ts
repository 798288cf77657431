import { beforeAll, describe, expect, inject, it } from "vitest";
import { entryRows } from "../helpers/database.ts";
import { batchOf, Client, type Company, type Loose, newCompany, newId, newJob, Phone, SENT, until } from "../helpers/edge.ts";
import { verifyLedger } from "../helpers/verifier.ts";

const note = { text: "ground frozen four inches down" };
let company: Company;
beforeAll(async () => {
  company = await newCompany(inject("edge"), inject("operatorKey"));
});
const append = (client: Client, job: string, ...entries: unknown[]) => client.post(`/api/jobs/${job}/entries`, batchOf(...entries));

describe("append", () => {
  it("fifty clients at once on a job that is only now opened get the numbers 1 to 50, and the rows are those of the chain", async () => {
    const job = newId();
    const about = { title: "Elm Street 4", zone: "America/New_York", language: "en", units: "inch" };
    const opened = await new Phone().entry(job, company.people.office, "job-opened", about);
    const crew = Array.from({ length: 49 }, async () => {
      const entry = await new Phone().entry(job, company.people.crew, "note-for-record", note);
      const client = new Client(inject("edge"));
      client.cookie = company.crew.cookie;
      // a phone that is there before the job sends again
      return until(
        () => append(client, job, entry),
        ({ status }) => status !== 404,
      );
    });
    const answers = await Promise.all([company.office.post("/api/jobs", batchOf(opened)), ...crew]);
    expect(answers.map(({ status }) => status)).toEqual([201, ...Array(49).fill(200)]);
    const given = answers.map(({ body }) => body.answers[0] as { id: string; number: number; outcome: string });
    expect(given.map(({ number }) => number).sort((a, b) => a - b)).toEqual(Array.from({ length: 50 }, (_, i) => i + 1));
    expect(given[0]).toMatchObject({ id: opened.sealed.id, number: 1 });
    const ledger = await company.office.get(`/api/jobs/${job}/ledger`);
    expect(verifyLedger(new TextDecoder().decode(ledger.bytes))).toMatchObject({ ok: true, faults: [] });
    expect(ledger.body.head.number).toBe(50);
    const rows = entryRows(inject("stackDirectory"), job);
    expect(rows.map(({ number }) => number)).toEqual(Array.from({ length: 50 }, (_, i) => i + 1));
    expect(new Map(rows.map(({ id, number }) => [id, number]))).toEqual(new Map(given.map(({ id, number }) => [id, number])));
    for (const [i, { hash, envelope }] of rows.entries()) {
      expect(JSON.parse(envelope)).toEqual(ledger.body.entries[i].envelope);
      expect(JSON.parse(envelope).before).toBe(rows[i - 1]?.hash ?? "0".repeat(64));
      if (i === 49) expect(hash).toBe(ledger.body.head.hash);
    }
  });

  it("the same batch twice, and half of it again, give the same numbers and write nothing", async () => {
    const { job, phone } = await newJob(company);
    const entries = [];
    for (let i = 0; i < 4; i += 1) entries.push(await phone.entry(job, company.people.crew, "note-for-record", note));
    const first = await append(company.crew, job, ...entries);
    const again = await append(company.crew, job, ...entries);
    const half = await append(company.crew, job, ...entries.slice(2));
    expect(first.body.answers.map((a: { number: number }) => a.number)).toEqual([3, 4, 5, 6]);
    expect(again.body.answers).toEqual(first.body.answers.map((a: object) => ({ ...a, outcome: "already there" })));
    expect(half.body.answers.map((a: { number: number }) => a.number)).toEqual([5, 6]);
    expect(half.body.head).toEqual(first.body.head);
  });

  it("an id used for something else is refused, and takes no other entry of its batch with it", async () => {
    const { job, phone } = await newJob(company);
    const first = await phone.entry(job, company.people.crew, "note-for-record", note);
    await append(company.crew, job, first);
    const other = await phone.entry(job, company.people.crew, "note-for-record", { text: "another" }, { id: first.sealed.id });
    const good = await phone.entry(job, company.people.crew, "note-for-record", note);
    const { status, body } = await append(company.crew, job, other, good);
    expect(status).toBe(200);
    expect(body.answers[0]).toMatchObject({
      id: first.sealed.id,
      refusal: { code: "entry-id-used", status: 409, place: "entries/0/sealed/id" },
    });
    expect(body.answers[0].refusal.detail.length).toBeGreaterThan(20);
    expect(body.answers[1]).toMatchObject({ id: good.sealed.id, number: 4, outcome: "taken" });
  });

  it("one id twice in one batch: the same entry is written once, another is refused", async () => {
    const { job, phone } = await newJob(company);
    const entry = await phone.entry(job, company.people.crew, "note-for-record", note);
    const other = await phone.entry(job, company.people.crew, "note-for-record", { text: "b" }, { id: entry.sealed.id });
    const { body } = await append(company.crew, job, entry, entry, other);
    expect(body.answers[0]).toMatchObject({ number: 3, outcome: "taken" });
    expect(body.answers[1]).toMatchObject({ number: 3, outcome: "already there" });
    expect(body.answers[2].refusal.code).toBe("entry-id-used");
  });

  it.each<[string, string, (entry: Record<string, Loose>) => void]>([
    ["ledger-part-digest", "a changed content", (e) => Object.assign(e.body.what.content, { text: "changed" })],
    ["ledger-part-digest", "a changed salt", (e) => Object.assign(e.body.what, { salt: "0".repeat(64) })],
    ["ledger-part-missing", "a part promised and not sent", (e) => delete e.body.what],
    ["ledger-part-unexpected", "a part that nothing promised", (e) => Object.assign(e.body, { who: { salt: "1".repeat(64), content: 1 } })],
    ["entry-digest-differs", "another digest than the phone says", (e) => Object.assign(e, { digest: "2".repeat(64) })],
    ["entry-clock", "a clock before 1970", (e) => Object.assign(e.sealed, { made: -5 })],
    ["entry-clock", "a clock after the year 9999", (e) => Object.assign(e.sealed, { made: 253_402_300_800_000 })],
    ["entry-clock", "half a millisecond", (e) => Object.assign(e.sealed, { made: 0.5 })],
    ["ledger-job", "another job's entry", (e) => Object.assign(e.sealed, { job: "another" })],
    ["entry-shape", "a time of receipt of the phone's own", (e) => Object.assign(e.sealed, { received: 1 })],
  ])("refuses %s: %s", async (code, _, bend) => {
    const { job, phone } = await newJob(company);
    const entry = structuredClone(await phone.entry(job, company.people.crew, "note-for-record", note)) as unknown as Record<string, Loose>;
    bend(entry);
    const { body } = await append(company.crew, job, entry);
    expect(body.answers[0].refusal).toMatchObject({ code });
    expect(body.head.number).toBe(2);
  });

  it("keeps a clock that is three years off, in entry and batch, and shows the skew", async () => {
    const { job, phone } = await newJob(company);
    const made = Date.now() - 3 * 365 * 86_400_000;
    const entry = await phone.entry(job, company.people.crew, "note-for-record", note, { made });
    const { status, body } = await company.crew.post(`/api/jobs/${job}/entries`, { sent: made + 1000, entries: [entry] });
    expect(status).toBe(200);
    expect(body.answers[0].outcome).toBe("taken");
    const { envelope } = (await company.crew.get(`/api/jobs/${job}/ledger`)).body.entries[2];
    expect(envelope).toMatchObject({ made, sent: made + 1000, received: body.received });
    expect(envelope.received - envelope.sent).toBeGreaterThan(2.9 * 365 * 86_400_000);
  });

  it.each([-1, 1.5, 253_402_300_800_000, "2026-05-04", null])("refuses a batch sent at %s", async (sent) => {
    const { job, phone } = await newJob(company);
    const entry = await phone.entry(job, company.people.crew, "note-for-record", note);
    const answer = await company.crew.post(`/api/jobs/${job}/entries`, { sent, entries: [entry] });
    expect(answer).toMatchObject({ status: 400, body: { code: "request-shape", place: "sent" } });
  });

  it("keeps an entry of a kind that it does not know", async () => {
    const { job, phone } = await newJob(company);
    const { body } = await append(company.crew, job, await phone.entry(job, company.people.crew, "seen-by-kite", { height: 12 }));
    expect(body.answers[0].outcome).toBe("taken");
    expect((await company.crew.get(`/api/jobs/${job}`)).status).toBe(200);
  });

  it("judges what a fact says by its kind, with the place", async () => {
    const { job, phone } = await newJob(company);
    const { crew } = company.people;
    const bad = await phone.entry(job, crew, "answered", { item: "lines-asked" });
    const unknown = await phone.entry(job, crew, "answered", { item: "no-such", choice: "it-is" });
    const typed = await phone.entry(job, crew, "reading-taken", { item: "top-below-soil", typed: "3 1/7", unit: "in" });
    const { body } = await append(company.crew, job, bad, unknown, typed);
    expect(body.answers.map((a: Loose) => [a.refusal.code, a.refusal.place])).toEqual([
      ["entry-shape", "entries/0/what/choice"],
      ["entry-unknown-item", "entries/1/what/item"],
      ["reading-denominator", "entries/2/what/typed"],
    ]);
  });

  it("an entry may need one that came before it in the same batch", async () => {
    const { job, phone } = await newJob(company);
    const { crew } = company.people;
    const tag = await phone.entry(job, crew, "tag-named", { set: "gate-post", tag: "A", hiddenBy: "pour-concrete" });
    const answer = await phone.entry(job, crew, "answered", { item: "post-plumb", tag: "A", choice: "it-is" });
    const { body } = await append(company.crew, job, tag, answer);
    expect(body.answers.map((a: { outcome: string }) => a.outcome)).toEqual(["taken", "taken"]);
    const view = (await company.crew.get(`/api/jobs/${job}`)).body;
    expect(view.tags).toEqual([{ set: "gate-post", tag: "A", hiddenBy: "pour-concrete" }]);
    expect(view.findings.find((f: Loose) => f.check === "post-plumb").verdict).toBe("within");
  });

  it("a crew session speaks for the crew, not for the office, and for nobody of another company", async () => {
    const { job, phone } = await newJob(company);
    const other = await newCompany(inject("edge"), inject("operatorKey"));
    const mate = (await company.office.post("/api/people", { name: "Lee Fern", role: "crew" })).body.person;
    const made = (person: string) => phone.entry(job, person, "note-for-record", note);
    const answers = (await append(company.crew, job, await made(mate), await made(company.people.office), await made(other.people.crew)))
      .body.answers;
    expect(answers[0].outcome).toBe("taken");
    expect(answers[1].refusal.code).toBe("entry-author");
    expect(answers[2].refusal.code).toBe("entry-author");
    const office = (await append(company.office, job, await made(company.people.crew), await made(company.people.office))).body.answers;
    expect(office[0].refusal.code).toBe("entry-author");
    expect(office[1].outcome).toBe("taken");
  });

  it("nobody but the program writes what the machine read, and the crew concedes nothing", async () => {
    const { job, phone } = await newJob(company);
    const { crew } = company.people;
    const facts = await phone.entry(job, crew, "picture-read", { photo: "a".repeat(64), facts: {} });
    const concession = await phone.entry(job, crew, "concession", { about: { item: "lines-asked" }, extent: "all", reason: "r" });
    const { body } = await append(company.crew, job, facts, concession);
    expect(body.answers.map((a: Loose) => a.refusal.code)).toEqual(["entry-role", "entry-role"]);
  });

  it("entries for a job of another company are refused as for a job that never was", async () => {
    const other = await newCompany(inject("edge"), inject("operatorKey"));
    const { job } = await newJob(other);
    const entry = await new Phone().entry(job, company.people.crew, "note-for-record", note);
    const theirs = await append(company.crew, job, entry);
    const nobodys = await append(company.crew, newId(), entry);
    expect(theirs.status).toBe(404);
    expect({ ...theirs.body, requestId: "" }).toEqual({ ...nobodys.body, requestId: "" });
    expect((await other.office.get(`/api/jobs/${job}/ledger`)).body.head.number).toBe(2);
  });

  it("refuses too many entries, too large a batch and too large a body, each by its name", async () => {
    const { job, phone } = await newJob(company);
    const many = await append(company.crew, job, ...Array(201).fill(0));
    expect(many).toMatchObject({ status: 413, body: { code: "batch-size" } });
    const text = "x".repeat(1_000_100);
    const large = await phone.entry(job, company.people.crew, "seen-by-kite", { text });
    expect((await append(company.crew, job, large)).body.answers[0].refusal.code).toBe("entry-body-size");
    const whole = await append(company.crew, job, large, large, large, large);
    expect(whole).toMatchObject({ status: 413, body: { code: "batch-size" } });
  });

  it("takes bodies just under the limit, and four of them with many quotes", async () => {
    const { job, phone } = await newJob(company);
    const near = await phone.entry(job, company.people.crew, "seen-by-kite", { text: "y".repeat(990_000) });
    expect((await append(company.crew, job, near)).body.answers[0].outcome).toBe("taken");
    const quotes = [];
    for (let i = 0; i < 4; i += 1) quotes.push(await phone.entry(job, company.people.crew, "seen-by-kite", { text: '"\\'.repeat(70_000) }));
    const { body } = await append(company.crew, job, ...quotes);
    expect(body.answers.map((a: { outcome: string }) => a.outcome)).toEqual(Array(4).fill("taken"));
    const ledger = await company.office.get(`/api/jobs/${job}/ledger`);
    expect(verifyLedger(new TextDecoder().decode(ledger.bytes)).faults).toEqual([]);
  });

  it("an entry as deep as a well is refused and breaks nothing", async () => {
    const { job, phone } = await newJob(company);
    const entry = await phone.entry(job, company.people.crew, "seen-by-kite", { a: 1 });
    const deep = `${"[".repeat(100_000)}${"]".repeat(100_000)}`;
    const text = JSON.stringify(batchOf(entry)).replace('{"a":1}', deep);
    const answer = await company.crew.ask("POST", `/api/jobs/${job}/entries`, {
      bytes: new TextEncoder().encode(text),
      headers: { "content-type": "application/json" },
    });
    expect(answer.status).toBe(200);
    expect(answer.body.answers[0].refusal.code).toBe("ledger-too-deep");
  });

  it("opens a job once: again with the same entries it is the same job, with others it is refused", async () => {
    const { job, phone } = await newJob(company);
    const entries = (await company.office.get(`/api/jobs/${job}/ledger`)).body.entries;
    const resent = entries.map(({ envelope, body }: Loose) => {
      const { number: _n, sent: _s, received: _r, before: _b, ...sealed } = envelope;
      return { sealed, body };
    });
    const again = await company.office.post("/api/jobs", batchOf(...resent));
    expect(again.status).toBe(201);
    expect(again.body.answers.map((a: { outcome: string }) => a.outcome)).toEqual(["already there", "already there"]);
    const other = await phone.entry(job, company.people.office, "job-opened", { title: "B", zone: "UTC", language: "en", units: "inch" });
    expect(await company.office.post("/api/jobs", batchOf(other))).toMatchObject({ status: 409, body: { code: "job-exists" } });
  });

  it("does not open a job by a first entry that is refused, and not under the id of a company's ledger", async () => {
    const phone = new Phone();
    const id = newId();
    const bad = await phone.entry(id, company.people.office, "job-opened", { title: "", zone: "UTC", language: "en", units: "inch" });
    const fine = await phone.entry(id, company.people.office, "note-for-office", note);
    expect(await company.office.post("/api/jobs", batchOf(bad, fine))).toMatchObject({ status: 422, body: { code: "entry-shape" } });
    expect((await company.office.get(`/api/jobs/${id}`)).status).toBe(404);
    const own = `company-${company.company}`;
    const taken = await phone.entry(own, company.people.office, "job-opened", { title: "A", zone: "UTC", language: "en", units: "inch" });
    expect(await company.office.post("/api/jobs", batchOf(taken))).toMatchObject({ status: 422, body: { place: "entries/0/sealed/job" } });
    expect((await company.office.get(`/api/jobs/${own}`)).status).toBe(404);
  });

  it("takes a body out when the office withholds it, and the chain still verifies", async () => {
    const { job, phone } = await newJob(company);
    const named = await phone.entry(job, company.people.crew, "note-for-record", note, { who: { name: "Pat Moor" } });
    await append(company.crew, job, named);
    const withheld = await phone.entry(job, company.people.office, "body-withheld", {
      entry: { id: named.sealed.id, digest: named.digest },
      parts: ["who"],
      reason: "asked for by the customer",
    });
    expect((await append(company.office, job, withheld)).body.answers[0].outcome).toBe("taken");
    const ledger = await company.office.get(`/api/jobs/${job}/ledger`);
    const text = new TextDecoder().decode(ledger.bytes);
    expect(text).not.toContain("Pat Moor");
    expect(verifyLedger(text)).toMatchObject({ ok: true, withheld: [{ number: 3, part: "who", reason: "erasure" }] });
    expect((await append(company.crew, job, named)).body.answers[0].outcome).toBe("already there");
  });

  it("sees at once what the entries just before changed: a body that was withheld, a role that may not be corrected", async () => {
    const { job, phone } = await newJob(company);
    const { crew, office } = company.people;
    const answered = await phone.entry(job, crew, "answered", { item: "lines-asked", choice: "it-is" });
    await append(company.crew, job, answered);
    const verdict = async () =>
      (await company.office.get(`/api/jobs/${job}`)).body.findings.find((f: Loose) => f.check === "lines-asked").verdict;
    expect(await verdict()).toBe("within");
    const entry = { id: answered.sealed.id, digest: answered.digest };
    await append(company.office, job, await phone.entry(job, office, "body-withheld", { entry, parts: ["what"], reason: "wrong yard" }));
    expect(await verdict()).toBe("not taken");
    const conceded = await phone.entry(job, office, "concession", {
      about: { item: "lines-asked" },
      extent: "all",
      reason: "asked by hand",
    });
    await append(company.office, job, conceded);
    const about = { entry: { id: conceded.sealed.id, digest: conceded.digest }, reason: "no", withdrawn: true };
    const corrected = await phone.entry(job, crew, "corrected", about);
    expect((await append(company.crew, job, corrected)).body.answers[0].refusal.code).toBe("entry-role");
    expect((await company.office.get(`/api/rebuild/${job}`)).body).toEqual({ job, same: true, differences: [] });
  });

  it("computes the findings again from the ledger and finds the same", async () => {
    const { job, phone } = await newJob(company);
    await append(company.crew, job, await phone.entry(job, company.people.crew, "answered", { item: "lines-asked", choice: "it-is" }));
    const view = (await company.office.get(`/api/jobs/${job}`)).body;
    expect(view.computedTo).toBe(view.head.number);
    expect((await company.office.get(`/api/rebuild/${job}`)).body).toEqual({ job, same: true, differences: [] });
    const listed = (await company.crew.get("/api/jobs")).body.jobs.find((one: { job: string }) => one.job === job);
    expect(listed).toMatchObject({ title: "Elm Street 4", entries: 3 });
    expect(listed.state.coverings.map((c: Loose) => [c.covering, c.done, c.clear])).toEqual([
      ["pour-concrete", false, false],
      ["bury-footing", false, false],
    ]);
  });

  it("says when it received, by its own clock alone", async () => {
    const { job, phone } = await newJob(company);
    const before = Date.now();
    const { body } = await append(company.crew, job, await phone.entry(job, company.people.crew, "note-for-record", note));
    expect(body.received).toBeGreaterThanOrEqual(before - 5);
    expect(body.received).toBeLessThanOrEqual(Date.now() + 5);
    expect(body.received).not.toBe(SENT);
  });
});
