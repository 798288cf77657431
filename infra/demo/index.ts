import type { Ledger } from "#core/ledger/index.ts";
import { type Budget, budgetOf, defaultSheet, everydayLimits, everydayTags } from "../sheets/index.ts";
import { Client } from "./client.ts";
import { courtyard } from "./courtyard.ts";
import { type DemoPlan, type Filled, fillDemo } from "./fill.ts";
import { oldPond } from "./old-pond.ts";

export { courtyard } from "./courtyard.ts";
export { drawing } from "./drawings.ts";
export { enterAll, type Photos } from "./enter.ts";
export type { DemoPlan } from "./fill.ts";
export { type ForPhone, forPhone } from "./for-phone.ts";
export { found, keep, type Version } from "./founding.ts";
export { openJob } from "./open-job.ts";
export { type JobBook, Phone, type SentEntry } from "./phone.ts";
export { type JobScript, moment, ZONE } from "./script.ts";
export { courtyardLedger } from "./without-stack.ts";
export { Client };

export interface DemoResult extends Omit<Filled, "office"> {
  readonly recordId: string;
  readonly pdf: Uint8Array;
  /** The company's file of the same job, and the record of the job by the second tolerance sheet, where they were asked for. */
  readonly companyFile?: Uint8Array;
  readonly oldPond?: Uint8Array;
  /** The printed design check of the job that was recorded. */
  readonly designCheck: Uint8Array;
  /** The record's view model. */
  readonly record: unknown;
  /** The edition that is attached to the record. */
  readonly ledger: Ledger;
  /** The company's public keys: whose record it is can be told by them. */
  readonly keys: unknown;
  /** Every finding of the record with the sentence that it prints. */
  readonly findings: readonly unknown[];
  readonly budget: { readonly asks: Budget; readonly most: Budget };
}

async function recordOf(office: Client, job: string, edition: "customer" | "company"): Promise<Uint8Array> {
  const { record } = await office.send<{ record: string }>("POST", `/api/jobs/${job}/records`, { edition });
  return office.bytes(`/api/records/${record}/pdf`);
}

/** Fills an empty stack with the demo company and issues one record. @throws with the reason, when any part refuses. */
export async function runDemo(plan: DemoPlan): Promise<DemoResult> {
  const { log } = plan;
  const { links, jobs, office } = await fillDemo(plan);
  const [whole] = jobs;
  if (whole === undefined) throw new Error("no job was opened");
  const issued = await office.send<{ record: string; pages: number }>("POST", `/api/jobs/${whole}/records`, {
    edition: "customer",
  });
  const at = `/api/records/${issued.record}`;
  const { company: id } = await office.get<{ company: string }>("/api/session");
  const [pdf, designCheck, record, ledger, keys] = await Promise.all([
    office.bytes(`${at}/pdf`),
    office.bytes(`/api/jobs/${whole}/design/pdf`),
    office.get<{ findings: readonly unknown[] }>(`${at}/model`),
    office.get<Ledger>(`${at}/ledger`),
    office.get(`/api/companies/${id}/keys`),
  ]);
  log(`${courtyard.title}: record issued, ${issued.pages} pages`);

  const isAll = plan.oldPond === "printed";
  const companyFile = isAll ? await recordOf(office, whole, "company") : undefined;
  if (companyFile !== undefined) log(`${courtyard.title}: the company's file of it issued too`);
  const oldPondPdf = isAll ? await recordOf(office, jobs.at(-1) ?? "", "customer") : undefined;
  if (oldPondPdf !== undefined) log(`${oldPond.title}: record issued by the second tolerance sheet`);

  const asks = budgetOf(defaultSheet(), everydayTags);
  log(
    `An everyday job by the default sheet: ${asks.holdingReadings} readings that hold (at most ${everydayLimits.holdingReadings}), ` +
      `${asks.readings} readings (${everydayLimits.readings}), ${asks.pictures} pictures (${everydayLimits.pictures}), ${asks.taps} taps (${everydayLimits.taps})`,
  );
  return {
    links,
    jobs,
    recordId: issued.record,
    pdf,
    ...(companyFile === undefined ? {} : { companyFile }),
    ...(oldPondPdf === undefined ? {} : { oldPond: oldPondPdf }),
    designCheck,
    record,
    ledger,
    keys,
    findings: record.findings,
    budget: { asks, most: everydayLimits },
  };
}
