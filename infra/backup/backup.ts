import "../node-version.mjs";
import { resolve } from "node:path";
import { fileURLToPath } from "node:url";
import { parseArgs } from "node:util";
import { databasesOf, takeBackup } from "./index.ts";

/** `npm run backup -- --out DIR`: a backup of the stack in `data/` into a folder of DIR, while it is in use or not. */
const usage = "Say which folder the backups lie in: npm run backup -- --out DIR";
const directory = resolve(process.env.ASBURIED_DATA ?? fileURLToPath(new URL("../../data", import.meta.url)));

const { out } = (() => {
  try {
    return parseArgs({ options: { out: { type: "string" } } }).values;
  } catch (error) {
    console.error((error as Error).message);
    return {};
  }
})();
if (!out) {
  console.error(usage);
  process.exit(2);
}

try {
  const began = Date.now();
  const { folder, list } = await takeBackup({
    directory,
    out: resolve(out),
    clock: () => Date.now(),
    log: (line) => console.log(line),
  });
  const bytes = [...databasesOf(list).map(({ database }) => database), ...list.objects].reduce((sum, one) => sum + one.bytes, 0);
  console.log(
    [
      `${folder}: ${list.ledgers.length} ledgers and ${list.objects.length} objects, ${(bytes / 1e6).toFixed(1)} MB, as of ${new Date(list.taken).toISOString()}, in ${((Date.now() - began) / 1000).toFixed(1)} s.`,
      `It is kept until ${new Date(list.until).toISOString()}; the first backup after that removes it.`,
      `The secret that wraps the seal keys is not in it. Carry secrets.json of ${directory} beside it, in another place: without it the backup cannot be told from a forged one, and the company's keys seal no more.`,
    ].join("\n"),
  );
} catch (error) {
  console.error((error as Error).message);
  process.exitCode = 1;
}
