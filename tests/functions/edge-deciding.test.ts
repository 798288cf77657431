import { beforeAll, describe, expect, inject, it } from "vitest";
import { batchOf, Client, type Company, type Loose, newCompany, newJob, type Phone, sha256 } from "../helpers/edge.ts";
import { verifyLedger } from "../helpers/verifier.ts";

let company: Company;
beforeAll(async () => {
  company = await newCompany(inject("edge"), inject("operatorKey"));
});

interface Job {
  readonly job: string;
  readonly phone: Phone;
}

const view = async (job: string): Promise<Loose> => (await company.office.get(`/api/jobs/${job}`)).body;
const findingOf = async (job: string, check: string): Promise<Loose> =>
  (await view(job)).findings.find((one: Loose) => one.check === check);
const decide = (job: string, kind: string, what: unknown, more: object = {}) =>
  company.office.post(`/api/jobs/${job}/decisions`, { kind, what, ...more });

async function enter({ job, phone }: Job, kind: string, what: Loose, who?: Loose): Promise<string> {
  const entry = await phone.entry(job, company.people.crew, kind, what, { made: Date.now(), ...(who ? { who } : {}) });
  const answer = await company.crew.post(`/api/jobs/${job}/entries`, { ...batchOf(entry), sent: Date.now() });
  expect(answer.body.answers).toMatchObject([{ outcome: "taken" }]);
  return entry.sealed.id;
}

const linesOf = async (job: string): Promise<Loose[]> => {
  const { body } = await company.office.get("/api/about-to-be-buried");
  return body.jobs.find((one: Loose) => one.job === job)?.lines ?? [];
};

describe("what is about to be buried", () => {
  it("is told to the office alone, job by job, the soonest covering first; a job with nothing to say is not there", async () => {
    const [quiet, late, soon]: readonly [Job, Job, Job] = [await newJob(company), await newJob(company), await newJob(company)];
    const hour = 3_600_000;
    const now = Date.now();
    await enter(late, "covering-announced", { covering: "bury-footing", about: now + 5 * hour });
    await enter(soon, "covering-announced", { covering: "bury-footing", about: now + hour });
    const { status, body } = await company.office.get("/api/about-to-be-buried");
    expect(status).toBe(200);
    const jobs = body.jobs.map((one: Loose) => one.job);
    expect(jobs.indexOf(soon.job)).toBeLessThan(jobs.indexOf(late.job));
    expect(jobs).not.toContain(quiet.job);
    expect(body.jobs.find((one: Loose) => one.job === soon.job)).toMatchObject({
      title: "Elm Street 4",
      soonest: now + hour,
      lines: [{ is: "announced", at: now + hour, title: { en: "bury the footing", es: "enterrar la base" } }],
    });
    expect(await company.crew.get("/api/about-to-be-buried")).toMatchObject({ status: 403, body: { code: "role-not-allowed" } });
    const other = await newCompany(inject("edge"), inject("operatorKey"));
    expect((await other.office.get("/api/about-to-be-buried")).body.jobs).toEqual([]);
  });

  it("says what is outside in both languages, and names who entered last from a phone that fell silent", async () => {
    const own = await newJob(company);
    const { job, phone } = own;
    const entry = await phone.entry(job, company.people.crew, "answered", { item: "lines-asked", choice: "it-is-not" });
    // an entry that the phone made long ago and sent now is news of now: nothing is silent yet
    await company.crew.post(`/api/jobs/${job}/entries`, batchOf(entry));
    const [line, ...rest] = await linesOf(job);
    expect(line).toMatchObject({ is: "outside", about: { item: "lines-asked" } });
    expect(line.says.en).toContain(line.title.en);
    expect(line.says.es).not.toBe(line.says.en);
    expect(rest).toEqual([]);
  });
});

describe("a picture that another job shows too", () => {
  it("is a line of both jobs until somebody has looked at it there", async () => {
    const [one, other] = [await newJob(company), await newJob(company)];
    const photo = sha256(crypto.getRandomValues(new Uint8Array(32)));
    const what = { item: "footing-seen", photo, bytes: 1, type: "image/jpeg" };
    const picture = await enter(one, "picture-taken", what);
    const seen = async (job: string) => (await linesOf(job)).filter(({ is }) => is === "seen before").map(({ count }) => count);
    expect(await seen(one.job)).toEqual([]);
    await enter(other, "picture-taken", what);
    expect([await seen(one.job), await seen(other.job)]).toEqual([[1], [1]]);
    expect((await company.office.post(`/api/jobs/${one.job}/looks`, { picture, says: "shows it" })).status).toBe(201);
    expect([await seen(one.job), await seen(other.job)]).toEqual([[], [1]]);
  });
});

describe("deciding", () => {
  it("accepted as built: the finding keeps its verdict, and what it held is clear of it", async () => {
    const own = await newJob(company);
    await enter(own, "reading-taken", { item: "top-below-soil", typed: "1", unit: "in" });
    expect(await findingOf(own.job, "footing-below")).toMatchObject({ verdict: "outside", holds: "bury-footing" });
    const holds = async () =>
      (await view(own.job)).clearances
        .find((one: Loose) => one.covering === "bury-footing")
        .lines.some((one: Loose) => one.about.check === "footing-below");
    expect(await holds()).toBe(true);
    const what = { about: { check: "footing-below" }, extent: "this footing", reason: "frost line is lower here" };
    const id = "d".repeat(32);
    const first = await decide(own.job, "concession", what, { id, who: { name: "Kim Alder" } });
    expect(first).toMatchObject({ status: 201, body: { entry: id } });
    expect((await decide(own.job, "concession", what, { id, who: { name: "Kim Alder" } })).body).toEqual(first.body);
    expect(await findingOf(own.job, "footing-below")).toMatchObject({ verdict: "outside", by: { way: "concession", entry: id } });
    expect(await holds()).toBe(false);
    expect((await linesOf(own.job)).filter(({ is }) => is === "outside")).toEqual([]);
  });

  it("a departure agreed before the covering is judged with its own limits; agreed after it, it changes nothing", async () => {
    const before = await newJob(company);
    await enter(before, "reading-taken", { item: "top-below-soil", typed: "1", unit: "in" });
    // 1 in ± 21 mm read in soft soil, the sheet wants 2 at the least; agreed is 1/10 in: 2,540 micrometres
    const what = { about: { check: "footing-below" }, lower: 2540, reason: "a wall stands there" };
    expect((await decide(before.job, "departure-agreed", what)).status).toBe(201);
    expect(await findingOf(before.job, "footing-below")).toMatchObject({ by: { way: "departure" } });
    const after = await newJob(company);
    await enter(after, "reading-taken", { item: "top-below-soil", typed: "1", unit: "in" });
    const { digest } = (await view(after.job)).sheet;
    await enter(after, "covered", { covering: "bury-footing", shown: "not yet", lines: ["x"], sheet: digest, rules: 1, restedOn: [] });
    expect((await linesOf(after.job))[0]).toMatchObject({ is: "covered on a not yet" });
    expect((await decide(after.job, "departure-agreed", what)).status).toBe(201);
    expect((await findingOf(after.job, "footing-below")).by).toBeUndefined();
  });

  it("a word by telephone: confirmed it is clear, not given it holds again; answered once", async () => {
    const word = (own: Job) => enter(own, "go-ahead", { covering: "bury-footing", reason: "rain", role: "crew" }, { name: "Kim" });
    const state = async (job: string) => (await view(job)).clearances.find((one: Loose) => one.covering === "bury-footing").state;
    const [yes, no] = [await newJob(company), await newJob(company)];
    const given = await word(yes);
    expect(await state(yes.job)).toBe("on word");
    const confirms = { covering: "bury-footing", reason: "I said so", role: "office", confirms: given };
    expect((await decide(yes.job, "go-ahead", confirms)).status).toBe(201);
    expect(await state(yes.job)).toBe("clear");
    expect(await decide(yes.job, "go-ahead-denied", { goAhead: given, reason: "no" })).toMatchObject({
      status: 409,
      body: { code: "entry-answered", place: "what/goAhead" },
    });
    const never = await word(no);
    const { digest } = (await view(no.job)).sheet;
    await enter(no, "covered", { covering: "bury-footing", shown: "on word", lines: [], sheet: digest, rules: 1, restedOn: [] });
    expect((await decide(no.job, "go-ahead-denied", { goAhead: never, reason: "nobody called here" })).status).toBe(201);
    expect(await state(no.job)).toBe("not yet");
    expect((await linesOf(no.job))[0]).toMatchObject({ is: "later doubted" });
    expect(await decide(no.job, "go-ahead", { ...confirms, confirms: "never-was" })).toMatchObject({
      body: { code: "entry-unknown-entry" },
    });
  });

  it("is the office's: the crew decides by neither route, and a photo that is not there is no tag", async () => {
    const { job, phone } = await newJob(company);
    const what = { about: { item: "gate-swings" }, reason: "squeaks" };
    expect(await company.crew.post(`/api/jobs/${job}/decisions`, { kind: "rework-asked", what })).toMatchObject({ status: 403 });
    const entry = await phone.entry(job, company.people.crew, "go-ahead-denied", { goAhead: "x", reason: "y" });
    const answer = await company.crew.post(`/api/jobs/${job}/entries`, batchOf(entry));
    expect(answer.body.answers).toMatchObject([{ refusal: { code: "entry-role" } }]);
    expect((await decide(job, "rework-asked", what)).status).toBe(201);
    expect(await decide(job, "rework-asked", { about: { item: "no-such" }, reason: "x" })).toMatchObject({
      body: { code: "entry-unknown-item" },
    });
    expect(await decide(job, "covered", {})).toMatchObject({ status: 400, body: { code: "request-shape", place: "kind" } });
    const inspected = { what: "electrical", state: "passed", number: "E-17", day: "2026-05-06", photo: "0".repeat(64) };
    expect(await decide(job, "inspected-by-authority", inspected)).toMatchObject({ body: { code: "photo-unknown", place: "what/photo" } });
    const { photo: _, ...without } = inspected;
    expect((await decide(job, "inspected-by-authority", without, { who: { name: "county office" } })).status).toBe(201);
  });
});

describe("done by others", () => {
  const nobody = () => new Client(inject("edge"));
  const linkFor = async (job: string, more: object = {}): Promise<string> => {
    const made = await company.office.post(`/api/jobs/${job}/others-links`, { step: "top-of-footing", what: "The wiring", ...more });
    expect(made).toMatchObject({ status: 201, body: { link: expect.stringMatching(/^\/others\/[\w-]{43}$/) } });
    return made.body.link.replace("/others/", "");
  };
  const pdf = new TextEncoder().encode("%PDF-1.7\n% a paper of our own\n%%EOF\n");
  const put = (token: string, bytes: Uint8Array, type = "application/pdf") =>
    nobody().ask("PUT", `/api/others/${token}/files/${sha256(bytes)}`, { bytes, headers: { "content-type": type } });

  it("a link shows its step, takes one paper and a name without anybody signing in, and ends on use", async () => {
    const { job } = await newJob(company);
    const token = await linkFor(job);
    const asked = await nobody().get(`/api/others/${token}`);
    expect(asked).toMatchObject({
      status: 200,
      body: { company: "Stillwater Yard Works", title: "Elm Street 4", what: "The wiring", language: "en" },
    });
    expect(Object.keys(asked.body).sort()).toEqual(["company", "ends", "language", "step", "title", "what"]);
    expect(await put(token, pdf)).toMatchObject({ status: 201, body: { is: "paper" } });
    const said = { name: "Lou Marsh", did: "outlet set and tried", paper: sha256(pdf) };
    expect((await nobody().post(`/api/others/${token}`, { ...said, paper: "0".repeat(64) })).body).toMatchObject({ code: "paper-unknown" });
    const used = await nobody().post(`/api/others/${token}`, said);
    expect(used.status).toBe(201);
    const ledger = (await company.office.get(`/api/jobs/${job}/ledger`)).body;
    const { envelope, body } = ledger.entries.at(-1);
    expect(envelope).toMatchObject({ kind: "done-by-others", author: { person: company.people.office } });
    expect(body.what.content).toMatchObject({ what: "The wiring: outlet set and tried", step: "top-of-footing", paper: sha256(pdf) });
    expect(body.who.content).toEqual({ name: "Lou Marsh" });
    const ended = { status: 404, body: { code: "others-link-ended" } };
    expect(await nobody().post(`/api/others/${token}`, said)).toMatchObject(ended);
    expect(await nobody().get(`/api/others/${token}`)).toMatchObject(ended);
    expect(await put(token, pdf)).toMatchObject(ended);
    expect((await company.office.get(`/api/jobs/${job}/others-links`)).body.links).toMatchObject([{ is: "used", what: "The wiring" }]);
    const paper = await company.office.get(`/api/papers/${sha256(pdf)}`);
    expect(new TextDecoder().decode(paper.bytes)).toBe(new TextDecoder().decode(pdf));
    expect(paper.headers.get("content-disposition")).toMatch(/^attachment/);
  });

  it("used by two at once it makes one entry", async () => {
    const { job } = await newJob(company);
    const token = await linkFor(job);
    await put(token, pdf);
    const both = await Promise.all(
      ["Lou Marsh", "Max Reed"].map((name) => nobody().post(`/api/others/${token}`, { name, did: "all", paper: sha256(pdf) })),
    );
    expect(both.map(({ status }) => status).sort()).toEqual([201, 404]);
    const { entries } = (await company.office.get(`/api/jobs/${job}/ledger`)).body;
    expect(entries.filter((one: Loose) => one.envelope.kind === "done-by-others")).toHaveLength(1);
  });

  it("no paper, no PDF, a step that is none, a withdrawn link and a sixth file too many are refused", async () => {
    const { job } = await newJob(company);
    expect(await company.office.post(`/api/jobs/${job}/others-links`, { step: "no-such", what: "x" })).toMatchObject({
      body: { code: "entry-unknown-item", place: "step" },
    });
    expect((await company.crew.post(`/api/jobs/${job}/others-links`, { step: "top-of-footing", what: "x" })).status).toBe(403);
    const token = await linkFor(job, { days: 1 });
    expect((await nobody().post(`/api/others/${token}`, { name: "n", did: "d" })).body).toMatchObject({ code: "others-paper-missing" });
    const text = new TextEncoder().encode("not a paper");
    expect(await put(token, text)).toMatchObject({ status: 415, body: { code: "paper-type" } });
    expect(await put(token, text, "image/jpeg")).toMatchObject({ status: 415, body: { code: "photo-type" } });
    for (let i = 0; i < 4; i += 1) await put(token, text);
    expect(await put(token, pdf)).toMatchObject({ status: 404, body: { code: "others-link-ended" } });
    const [{ link }] = (await company.office.get(`/api/jobs/${job}/others-links`)).body.links;
    expect((await company.office.post(`/api/jobs/${job}/others-links/${link}/withdraw`)).status).toBe(204);
    expect((await nobody().get(`/api/others/${token}`)).status).toBe(404);
    expect((await company.office.get(`/api/jobs/${job}/others-links`)).body.links).toMatchObject([{ is: "withdrawn" }]);
    const answer = await nobody().ask("POST", `/api/others/${token}`, { json: {}, headers: { "x-asburied": "0" } });
    expect(answer).toMatchObject({ status: 403, body: { code: "request-origin" } });
  });
});

describe("moved to the right job by the office", () => {
  it("a whole visit goes with what corrects it, both jobs are judged anew, and a move asked for twice is one", async () => {
    const [wrong, right] = [await newJob(company), await newJob(company)];
    const answered = await enter(wrong, "answered", { item: "lines-asked", choice: "it-is-not" });
    const { entries } = (await company.office.get(`/api/jobs/${wrong.job}/ledger`)).body;
    const last = entries.at(-1).envelope.number;
    const reading = await enter(wrong, "reading-taken", { item: "top-below-soil", typed: "4", unit: "in" });
    const named = { id: answered, digest: "0".repeat(64) };
    await enter(wrong, "corrected", { entry: named, reason: "slip", replace: { choice: "it-is" } });
    const asked = { to: right.job, entries: [answered, reading], reason: "wrong yard", id: "a1b2c3d4e5f6a7b8" };
    const moved = await company.office.post(`/api/jobs/${wrong.job}/moves`, asked);
    expect(moved).toMatchObject({ status: 200, body: { out: last + 3, entries: 3, issueAgain: [] } });
    const verdicts = async (job: string) => [
      (await findingOf(job, "lines-asked")).verdict,
      (await findingOf(job, "footing-below")).verdict,
    ];
    expect(await verdicts(wrong.job)).toEqual(["not taken", "not taken"]);
    // within: as corrected, and 4 in where 2 are the least
    expect(await verdicts(right.job)).toEqual(["within", "within"]);
    const again = await company.office.post(`/api/jobs/${wrong.job}/moves`, asked);
    expect(again.body).toEqual(moved.body);
    expect((await company.office.get(`/api/jobs/${right.job}/ledger`)).body.entries).toHaveLength(3);
    for (const { job } of [wrong, right]) {
      const ledger = await company.office.get(`/api/jobs/${job}/ledger`);
      expect(verifyLedger(new TextDecoder().decode(ledger.bytes)).faults).toEqual([]);
    }
  });

  it("is refused to the crew, for what is not there, and for what belongs to its job alone", async () => {
    const [wrong, right] = [await newJob(company), await newJob(company)];
    const path = `/api/jobs/${wrong.job}/moves`;
    const move = { to: right.job, reason: "x" };
    expect(await company.crew.post(path, { ...move, entries: ["a"] })).toMatchObject({ status: 403 });
    expect(await company.office.post(path, { ...move, entries: ["a"] })).toMatchObject({
      body: { code: "entry-unknown-entry", place: "entries/0" },
    });
    const { entries } = (await company.office.get(`/api/jobs/${wrong.job}/ledger`)).body;
    expect(await company.office.post(path, { ...move, entries: [entries[0].envelope.id] })).toMatchObject({
      body: { code: "entry-not-applicable", place: "entries/0" },
    });
    expect(await company.office.post(path, { to: wrong.job, reason: "x", entries: ["a"] })).toMatchObject({
      body: { code: "job-unknown" },
    });
  });
});
