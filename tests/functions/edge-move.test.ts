import { beforeAll, describe, expect, inject, it } from "vitest";
import { entryDigest } from "#core/ledger/index.ts";
import { digest } from "#infra/node-digest.ts";
import { batchOf, type Company, type Loose, newCompany, newJob, SENT } from "../helpers/edge.ts";
import { verifyLedger } from "../helpers/verifier.ts";

let company: Company;
beforeAll(async () => {
  company = await newCompany(inject("edge"), inject("operatorKey"));
});

/** A reading filed under the wrong job, and the two entries that move it. */
async function filedWrong() {
  const [wrong, right] = [await newJob(company), await newJob(company)];
  const reading = await wrong.phone.entry(wrong.job, company.people.crew, "answered", { item: "lines-asked", choice: "it-is" });
  await company.crew.post(`/api/jobs/${wrong.job}/entries`, batchOf(reading));
  const entries = [{ id: reading.sealed.id, digest: reading.digest }];
  const { id, kind, author, run, made } = reading.sealed;
  const moved = [{ id, kind, author: { ...author }, run, made, what: { item: "lines-asked", choice: "it-is" } }];
  const { office } = company.people;
  const reason = "wrong yard";
  const outEntry = await wrong.phone.entry(wrong.job, office, "moved-out", { entries, to: right.job, reason });
  const inEntry = await wrong.phone.entry(right.job, office, "moved-in", { from: wrong.job, reason, entries: moved });
  return { wrong, right, moved, body: { to: right.job, entries, reason, sent: SENT, outEntry, inEntry } };
}
const heads = async (...jobs: string[]) =>
  Promise.all(jobs.map(async (job) => (await company.office.get(`/api/jobs/${job}`)).body.head.number));

describe("moving entries to the right job", () => {
  it("writes both ledgers, and what counts has moved", async () => {
    const { wrong, right, body } = await filedWrong();
    const answer = await company.office.post(`/api/jobs/${wrong.job}/move`, body);
    expect(answer).toMatchObject({ status: 200, body: { out: 4, in: 3 } });
    const verdict = async (job: string) =>
      (await company.office.get(`/api/jobs/${job}`)).body.findings.find((f: Loose) => f.check === "lines-asked").verdict;
    expect(await verdict(wrong.job)).toBe("not taken");
    expect(await verdict(right.job)).toBe("within");
    for (const { job } of [wrong, right]) {
      const ledger = await company.office.get(`/api/jobs/${job}/ledger`);
      expect(verifyLedger(new TextDecoder().decode(ledger.bytes)).faults).toEqual([]);
    }
    expect((await company.office.post(`/api/jobs/${wrong.job}/move`, body)).body).toEqual(answer.body);
    expect(await heads(wrong.job, right.job)).toEqual([4, 3]);
  });

  it("writes neither when one of the two does not fit", async () => {
    const { wrong, right, moved, body } = await filedWrong();
    const { office } = company.people;
    const changed = [{ ...moved[0], what: { item: "lines-asked", choice: "it-is-not" } }];
    const inEntry = await wrong.phone.entry(right.job, office, "moved-in", { from: wrong.job, reason: "r", entries: changed as Loose });
    const tampered = await company.office.post(`/api/jobs/${wrong.job}/move`, { ...body, inEntry });
    expect(tampered).toMatchObject({ status: 422, body: { code: "entry-shape", place: "inEntry/what/entries/0" } });
    const gone = await company.office.post(`/api/jobs/${wrong.job}/move`, {
      ...body,
      inEntry: { ...body.inEntry, digest: "0".repeat(64) },
    });
    expect(gone).toMatchObject({ status: 422, body: { code: "entry-digest-differs" } });
    const nowhere = await company.office.post(`/api/jobs/${wrong.job}/move`, { ...body, to: "no-such-job" });
    expect(nowhere).toMatchObject({ status: 404, body: { code: "job-unknown" } });
    expect(await heads(wrong.job, right.job)).toEqual([3, 2]);
  });

  it("does not move what the job does not have", async () => {
    const { wrong, right, body } = await filedWrong();
    const entries = [{ id: "never-was", digest: "1".repeat(64) }];
    const outEntry = await wrong.phone.entry(wrong.job, company.people.office, "moved-out", { entries, to: right.job, reason: "r" });
    const answer = await company.office.post(`/api/jobs/${wrong.job}/move`, { ...body, entries, outEntry });
    expect(answer).toMatchObject({ status: 422, body: { code: "entry-unknown-entry", place: "entries/0" } });
  });

  it("does not move what is about its own job alone", async () => {
    const { wrong, right } = await filedWrong();
    const { entries: all } = (await company.office.get(`/api/jobs/${wrong.job}/ledger`)).body;
    const { office } = company.people;
    const reason = "wrong yard";
    for (const kind of ["job-opened", "version-taken-over"]) {
      const { envelope, body } = all.find((entry: Loose) => entry.envelope.kind === kind);
      const { number: _n, sent: _s, received: _r, before: _b, ...sealed } = envelope;
      const digested = await entryDigest(digest, sealed);
      if (!digested.ok) throw new Error(digested.refusal.code);
      const entries = [{ id: envelope.id, digest: digested.value }];
      const { id, author, run, made } = envelope;
      const moved = [{ id, kind, author, run, made, what: body.what.content }];
      const outEntry = await wrong.phone.entry(wrong.job, office, "moved-out", { entries, to: right.job, reason });
      const inEntry = await wrong.phone.entry(right.job, office, "moved-in", { from: wrong.job, reason, entries: moved });
      const answer = await company.office.post(`/api/jobs/${wrong.job}/move`, { to: right.job, entries, reason, outEntry, inEntry });
      expect(answer).toMatchObject({ status: 422, body: { code: "entry-not-applicable", place: "entries/0", figures: { kind } } });
    }
    expect(await heads(wrong.job, right.job)).toEqual([3, 2]);
  });

  it("is a command of its own: neither entry is taken in a batch", async () => {
    const { wrong, body } = await filedWrong();
    const answer = await company.office.post(`/api/jobs/${wrong.job}/entries`, batchOf(body.outEntry));
    expect(answer.body.answers[0].refusal.code).toBe("entry-role");
  });

  it("two moves in opposite directions at once both come through", async () => {
    const [a, b] = [await filedWrong(), await filedWrong()];
    const answers = await Promise.all([a, b].map(({ wrong, body }) => company.office.post(`/api/jobs/${wrong.job}/move`, body)));
    expect(answers.map(({ status }) => status)).toEqual([200, 200]);
  });
});
