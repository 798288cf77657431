import { expect, inject, it } from "vitest";
import { batchOf, type Company, newCompany, newJob, type Phone } from "../helpers/edge.ts";

const TRIES = 10;

/** A batch of twenty as a phone sends it: answers, pictures' notes and the like, among them what names an item of the sheet. */
const twenty = (phone: Phone, job: string, person: string): Promise<unknown[]> =>
  Promise.all(
    Array.from({ length: 20 }, async (_, i) =>
      i % 2 === 0
        ? phone.entry(job, person, "note-for-record", { text: "ground frozen four inches down" })
        : phone.entry(job, person, "reading-taken", { item: "top-below-soil", typed: "3 1/4", unit: "in" }),
    ),
  );

/** Fills a job to as many entries as asked for; all of them have been judged and computed. */
async function jobOf(company: Company, entries: number): Promise<{ job: string; phone: Phone }> {
  const { job, phone } = await newJob(company);
  for (let have = 2; have < entries; ) {
    const part = Math.min(200, entries - have);
    const batch = await Promise.all(
      Array.from({ length: part }, () => phone.entry(job, company.people.crew, "note-for-record", { text: "stone, then more stone" })),
    );
    expect((await company.crew.post(`/api/jobs/${job}/entries`, batchOf(...batch))).status).toBe(200);
    have += part;
  }
  return { job, phone };
}

/** Milliseconds of one append of twenty, after what followed the one before was done. */
async function once(company: Company, { job, phone }: { job: string; phone: Phone }): Promise<number> {
  const batch = await twenty(phone, job, company.people.crew);
  await company.crew.get(`/api/jobs/${job}`);
  const began = performance.now();
  const { status, body } = await company.crew.post(`/api/jobs/${job}/entries`, batchOf(...batch));
  const took = performance.now() - began;
  expect(status).toBe(200);
  expect(body.answers.every((one: { outcome?: string }) => one.outcome === "taken")).toBe(true);
  return took;
}

it("an append of twenty costs in a job of two thousand entries little more than in one of ten", async () => {
  const company = await newCompany(inject("edge"), inject("operatorKey"));
  const [small, large] = [await jobOf(company, 10), await jobOf(company, 2_000)];
  const times: { few: number; many: number }[] = [];
  // by turns, so that what else the machine does falls on both; the shortest of each is the cost
  for (let i = 0; i < TRIES; i += 1) times.push({ few: await once(company, small), many: await once(company, large) });
  const few = Math.min(...times.slice(1).map((time) => time.few));
  const many = Math.min(...times.slice(1).map((time) => time.many));
  console.log(`20 entries to a job of 10: ${few.toFixed(1)} ms; of 2,000: ${many.toFixed(1)} ms; ratio ${(many / few).toFixed(2)}`);
  expect(many / few).toBeLessThan(2);
}, 120_000);
