import { writeFileSync } from "node:fs";
import { clearances, findings, jobState, RULES } from "#core/job/index.ts";
import { afterFaults, faultyJob } from "./faulty-job.ts";

/** Freezes the faulty job and its findings under the rules as they stand: `npx node tests/helpers/freeze-job.ts`. */
const ledger = faultyJob();
const state = jobState(ledger);
const all = findings(state);
const frozen = { rules: RULES, now: afterFaults, ledger, findings: all, clearances: clearances(state, all, afterFaults) };
const file = new URL(`../samples/job/frozen-${RULES}.json`, import.meta.url);
writeFileSync(file, `${JSON.stringify(frozen)}\n`);
console.log(`${all.length} findings frozen in ${file.pathname}`);
