import "../node-version.mjs";
import { mkdir, mkdtemp, rm, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join, resolve } from "node:path";
import { parseArgs } from "node:util";
import { runCompanies, runDemo } from "./demo-result.ts";
import { type Stack, startStack } from "./index.ts";

/**
 * `npm run demo -- --out DIR`: the main job on a fresh temporary stack, its results in DIR, exit 0 or the reason.
 * `npm run demo -- --company DIR`: the two made-up companies of the owner's questions instead, their answers in DIR. `--ledgers 10000`:
 * the large one comes in as so many ledgers through the archive import, every one verified, instead of as rows.
 */
const { out, company, ledgers } = (() => {
  try {
    return parseArgs({ options: { out: { type: "string" }, company: { type: "string" }, ledgers: { type: "string" } } }).values;
  } catch (error) {
    console.error((error as Error).message);
    return {};
  }
})();
const folder = resolve(out ?? company ?? "");
if (!out && !company) {
  console.error("Say where the results go: npm run demo -- --out DIR, or -- --company DIR");
  process.exit(2);
}

const jobs = ledgers === undefined ? undefined : Number(ledgers);
if (jobs !== undefined && !(Number.isSafeInteger(jobs) && jobs > 0)) {
  console.error("Say of how many jobs: --ledgers 10000");
  process.exit(2);
}

const directory = await mkdtemp(join(tmpdir(), "asburied-demo-"));
let stack: Stack | undefined;
const clear = async (): Promise<void> => {
  await stack?.stop();
  await rm(directory, { recursive: true, force: true });
};
for (const signal of ["SIGINT", "SIGTERM"] as const) {
  process.on(signal, () => void clear().finally(() => process.exit(130)));
}

const json = (value: unknown): string => `${JSON.stringify(value, undefined, 2)}\n`;
const log = (line: string): void => console.log(line);

async function mainJob({ edge, secrets }: Stack): Promise<void> {
  const { pdf, companyFile, oldPond, designCheck, record, ledger, keys, findings } = await runDemo({
    edge,
    operatorKey: secrets.operatorKey,
    log,
    oldPond: "printed",
  });
  await writeFile(join(folder, "record.pdf"), pdf);
  if (companyFile !== undefined) await writeFile(join(folder, "record-company.pdf"), companyFile);
  if (oldPond !== undefined) await writeFile(join(folder, "record-old-pond.pdf"), oldPond);
  await writeFile(join(folder, "design-check.pdf"), designCheck);
  await writeFile(join(folder, "record.json"), json(record));
  await writeFile(join(folder, "ledger.json"), json(ledger));
  await writeFile(join(folder, "findings.json"), json(findings));
  await writeFile(join(folder, "keys.json"), json(keys));
  console.log(
    `record.pdf, record-company.pdf, record-old-pond.pdf, design-check.pdf, record.json, ledger.json, findings.json and keys.json are in ${folder}`,
  );
}

try {
  await mkdir(folder, { recursive: true });
  stack = await startStack({ directory, demoLinks: true, sweepEvery: 2_000, log });
  if (out) await mainJob(stack);
  if (company)
    await runCompanies({ edge: stack.edge, operatorKey: stack.secrets.operatorKey, log, folder, ...(jobs === undefined ? {} : { jobs }) });
} catch (error) {
  console.error(`The demo stopped: ${(error as Error).message}`);
  process.exitCode = 1;
} finally {
  await clear();
}
process.exit();
