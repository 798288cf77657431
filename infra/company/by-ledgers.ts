import { type Observed, questions } from "#core/quality/index.ts";
import type { Client } from "../demo/index.ts";
import { archiveDrawn } from "./archive.ts";
import { companyFrom, type Drawing } from "./draw.ts";
import { factsOf } from "./facts.ts";
import { ledgerDrawn, versionsDrawn } from "./ledger.ts";
import { questionsSheet } from "./sheet.ts";

export interface ToEdge {
  readonly edge: string;
  readonly operatorKey: string;
  readonly log: (line: string) => void;
}

export interface ByLedgers {
  readonly owner: Client;
  readonly observed: Observed;
  /** From the first archive sent to the last one read, and their rows made. */
  readonly seconds: number;
}

const DAY_MS = 86_400_000;
export const dayOf = (now: number): number => Math.floor(now / DAY_MS) * DAY_MS;
/** Archives on their way at once: while one is read the next is drawn. */
const AT_ONCE = 4;
const SAID_EVERY = 1_000;

async function founded({ edge, operatorKey }: ToEdge, { id, name }: { readonly id: string; readonly name: string }): Promise<Client> {
  // loaded only now: who draws a company has no use for the demo's pictures
  const { Client } = await import("../demo/index.ts");
  const founding = { id, name, zone: "UTC", units: "inch", language: "en", owner: { name: "Company owner" } };
  const { ownerLink } = await new Client(edge).send<{ ownerLink: string }>("POST", "/api/companies", founding, {
    authorization: `Operator ${operatorKey}`,
  });
  return new Client(edge).signIn(ownerLink);
}

/** A drawn company by its ledgers: founded, every job's archive read, what the company keeps of itself entered, and no rows behind. */
export async function companyByLedgers(
  to: ToEdge,
  drawing: Drawing,
  called: { readonly id: string; readonly name: string },
): Promise<ByLedgers> {
  const owner = await founded(to, called);
  await owner.send("POST", "/api/company/sheets", questionsSheet());
  const [observed, versions] = [companyFrom(drawing), await versionsDrawn()];
  const began = performance.now();
  let [entries, read] = [0, 0];
  const waiting = observed.jobs.values();
  const sender = async (): Promise<void> => {
    for (const job of waiting) {
      const ledger = await ledgerDrawn(job, versions, called.id);
      await owner.postFile("/api/archives", archiveDrawn(ledger, job, versions, called.id), "application/zip");
      entries += ledger.entries.length;
      read += 1;
      if (read % SAID_EVERY === 0) to.log(`  ${read} jobs read, ${(read / ((performance.now() - began) / 1000)).toFixed(1)} a second`);
    }
  };
  await Promise.all(Array.from({ length: AT_ONCE }, sender));
  for (const fact of factsOf(observed.company, called.id)) await owner.send("POST", "/api/company/facts", fact);
  // rows that are behind are made some at a time: asked until none is
  const [first] = questions;
  for (let behind = 1; behind > 0; ) ({ behind } = await owner.get<{ behind: number }>(`/api/questions/${first?.id}`));
  const seconds = (performance.now() - began) / 1000;
  const rate = (read / seconds).toFixed(1);
  to.log(
    `${read} jobs came in as archives: ${entries} entries, their chains verified, ${rate} jobs a second; photos as facts, without bytes`,
  );
  return { owner, observed, seconds };
}
