import "../node-version.mjs";
import { readFile } from "node:fs/promises";
import { resolve } from "node:path";
import { fileURLToPath } from "node:url";
import { parseArgs } from "node:util";
import { NotRestored, restoreBackup } from "./index.ts";

/**
 * `npm run restore -- --from DIR --secrets secrets.json`: reads the newest backup of DIR (or the backup DIR itself) back into `data/`,
 * which must be empty. Exit 0: read back; 1: refused, with what is wrong; 2: not understood.
 */
const usage =
  "Say which backup, and where the secret of its stack lies: npm run restore -- --from DIR --secrets secrets.json (or --without-secret). The folder that it goes into is named by ASBURIED_DATA, else it is data/.";
const directory = resolve(process.env.ASBURIED_DATA ?? fileURLToPath(new URL("../../data", import.meta.url)));

const asked = (() => {
  try {
    const options = { from: { type: "string" }, secrets: { type: "string" }, "without-secret": { type: "boolean" } } as const;
    return parseArgs({ options }).values;
  } catch (error) {
    console.error((error as Error).message);
    return undefined;
  }
})();
const { from, secrets, "without-secret": isLost = false } = asked ?? {};
if (!from || (secrets === undefined) !== isLost) {
  console.error(usage);
  process.exit(2);
}

async function secretIn(file: string): Promise<string> {
  const held = JSON.parse(await readFile(file, "utf8")) as { sealSecret?: unknown };
  if (typeof held.sealSecret !== "string" || held.sealSecret === "") throw new NotRestored(`${file} holds no secret that wraps seal keys.`);
  return held.sealSecret;
}

try {
  const { folder, list, erased } = await restoreBackup({
    from: resolve(from),
    directory,
    secret: secrets === undefined ? undefined : await secretIn(resolve(secrets)),
    migrations: fileURLToPath(new URL("../migrations", import.meta.url)),
    clock: () => Date.now(),
    log: (line) => console.log(line),
  });
  console.log(
    `${folder} is whole and has been read back into ${directory}: ${list.ledgers.length} ledgers, ${list.objects.length} objects.`,
  );
  if (erased > 0) console.log(`${erased} things that were erased after it was taken have been left out.`);
  console.log(`It stands as of ${new Date(list.taken).toISOString()}; what was acknowledged later is not in it.`);
} catch (error) {
  console.error(`Not read back. ${(error as Error).message}`);
  process.exitCode = 1;
}
