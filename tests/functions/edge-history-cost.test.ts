import { randomBytes } from "node:crypto";
import { expect, it } from "vitest";
import { batchOf, type Company, newCompany, newJob, type Phone, sha256 } from "../helpers/edge.ts";
import { largeEdge } from "../helpers/large-company.ts";

const TRIES = 10;
/** Ten thousand jobs in the long run; a cost that grows with them shows at two thousand too, two hundred times the small company. */
const HISTORY = [10, process.env.ASBURIED_LONG === undefined ? 2_000 : 10_000] as const;

/** Milliseconds of one append of twenty, pictures among them, and until everything that is kept of the job was made anew. */
async function kept(company: Company, { job, phone }: { job: string; phone: Phone }): Promise<{ append: number; all: number }> {
  const { crew } = company.people;
  const batch = await Promise.all(
    Array.from({ length: 20 }, (_, i) =>
      i % 5 === 0
        ? phone.entry(job, crew, "picture-taken", { item: "footing-seen", photo: sha256(randomBytes(8)), bytes: 1_000, type: "image/jpeg" })
        : phone.entry(job, crew, "reading-taken", { item: "top-below-soil", typed: "3 1/4", unit: "in" }),
    ),
  );
  const began = performance.now();
  const { status, body } = await company.crew.post(`/api/jobs/${job}/entries`, batchOf(...batch));
  const append = performance.now() - began;
  expect([status, body.answers.every((one: { outcome?: string }) => one.outcome === "taken")]).toEqual([200, true]);
  expect((await company.crew.get(`/api/jobs/${job}`)).status).toBe(200);
  const all = performance.now() - began;
  expect((await company.owner.get(`/api/rebuild/${job}`)).body.same).toBe(true);
  return { append, all };
}

it(`an append costs a company of ${HISTORY[1]} jobs little more than one of ten, with everything that is kept of the job for its owner`, async () => {
  const large = await largeEdge();
  try {
    const companies = [];
    for (const jobs of HISTORY) {
      const company = await newCompany(large.url, large.operatorKey);
      await large.history(company.company, jobs);
      companies.push({ company, job: await newJob(company) });
    }
    const times: { append: number; all: number }[][] = [];
    for (let i = 0; i <= TRIES; i += 1) {
      const turn = [];
      for (const { company, job } of companies) turn.push(await kept(company, job));
      times.push(turn);
    }
    const shortest = (which: number, of: "append" | "all"): number => Math.min(...times.slice(1).map((turn) => turn[which]?.[of] ?? 0));
    for (const what of ["append", "all"] as const) {
      const [few, many] = [shortest(0, what), shortest(1, what)];
      console.log(
        `${what}, company of ${HISTORY[0]} jobs: ${few.toFixed(1)} ms; of ${HISTORY[1]}: ${many.toFixed(1)} ms; ratio ${(many / few).toFixed(2)}`,
      );
      expect(many / few).toBeLessThan(1.5);
    }
  } finally {
    await large.stop();
  }
}, 180_000);
