import "../node-version.mjs";
import { mkdir, mkdtemp, rm, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join, resolve } from "node:path";
import { parseArgs } from "node:util";
import { runDemo } from "./demo-result.ts";
import { type Stack, startStack } from "./index.ts";

/** `npm run demo -- --out DIR`: the main job on a fresh temporary stack, its results in DIR, exit 0 or the reason. */
const out = (() => {
  try {
    return parseArgs({ options: { out: { type: "string" } } }).values.out;
  } catch (error) {
    console.error((error as Error).message);
    return undefined;
  }
})();
if (!out) {
  console.error("Say where the results go: npm run demo -- --out DIR");
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

try {
  stack = await startStack({ directory, demoLinks: true, sweepEvery: 2_000, log });
  const { pdf, designCheck, record, ledger, keys, findings } = await runDemo({
    edge: stack.edge,
    operatorKey: stack.secrets.operatorKey,
    log,
  });
  const folder = resolve(out);
  await mkdir(folder, { recursive: true });
  await writeFile(join(folder, "record.pdf"), pdf);
  await writeFile(join(folder, "design-check.pdf"), designCheck);
  await writeFile(join(folder, "record.json"), json(record));
  await writeFile(join(folder, "ledger.json"), json(ledger));
  await writeFile(join(folder, "findings.json"), json(findings));
  await writeFile(join(folder, "keys.json"), json(keys));
  console.log(`record.pdf, design-check.pdf, record.json, ledger.json, findings.json and keys.json are in ${folder}`);
} catch (error) {
  console.error(`The demo stopped: ${(error as Error).message}`);
  process.exitCode = 1;
} finally {
  await clear();
}
process.exit();
