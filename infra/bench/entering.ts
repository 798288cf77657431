import { randomBytes } from "node:crypto";
import { type Json, type SealedEntry, seal } from "#core/ledger/index.ts";
import { digest } from "../node-digest.ts";
import { type Company, newId } from "./edge-for-bench.ts";

/** A job with the phone that enters into it. */
export interface Job {
  readonly company: Company;
  readonly job: string;
  readonly phone: string;
  run: number;
}

export async function jobIn(company: Company): Promise<Job> {
  const { job } = await company.office.send<{ job: string }>("POST", "/api/openings", { title: "Bench fall", sheet: company.sheet });
  return { company, job, phone: newId(), run: 0 };
}

/** One entry, sealed as a phone does. */
export async function entered(job: Job, kind: string, what: Json): Promise<SealedEntry> {
  const author = { person: job.company.person, phone: job.phone };
  const about = { job: job.job, id: newId(), kind, author, run: job.run, made: Date.UTC(2026, 4, 4, 12, 0, job.run) };
  job.run += 1;
  const made = await seal(digest, { ...about, contents: { what }, salts: { what: randomBytes(32).toString("hex") } });
  if (!made.ok) throw new Error(`the bench's entry was not sealed: ${made.refusal.code}`);
  return made.value;
}
