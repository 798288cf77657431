import "../node-version.mjs";
import { readFile } from "node:fs/promises";
import { parseArgs } from "node:util";
import type { Refusal } from "#core/outcome/index.ts";
import { checkingSentence, checkRecord, checkSaid, type KeyList, readKeyList } from "#core/proof/index.ts";
import { meansWith } from "./means.ts";
import { onPaper } from "./paper.ts";
import { readPdf } from "./read-pdf.ts";

/**
 * `npm run verify -- record.pdf [--keys keys.json ...] [--language es]`: whether a record is as it was sealed, without asking
 * anybody. Exit 0: unchanged; 1: changed or not sealed; 2: it could not be read.
 */
const usage = "Say which record: npm run verify -- record.pdf [--keys keys.json] [--language en|es]";

const asked = (() => {
  try {
    const options = { keys: { type: "string", multiple: true }, language: { type: "string" } } as const;
    return parseArgs({ options, allowPositionals: true });
  } catch (error) {
    console.error((error as Error).message);
    return undefined;
  }
})();

const [path, ...more] = asked?.positionals ?? [];
const language = asked?.values.language ?? "en";
if (path === undefined || more.length > 0 || (language !== "en" && language !== "es")) {
  console.error(usage);
  process.exit(2);
}

const sentence = checkingSentence(language);
const stopped = (file: string, refusal: Refusal): never => {
  console.error(`${file}: ${sentence(refusal)}`);
  process.exit(2);
};

async function bytesOf(file: string): Promise<Uint8Array<ArrayBuffer>> {
  try {
    return new Uint8Array(await readFile(file));
  } catch (error) {
    console.error((error as Error).message);
    return process.exit(2);
  }
}

async function keyList(file: string): Promise<KeyList> {
  let value: unknown;
  try {
    value = JSON.parse(new TextDecoder().decode(await bytesOf(file)));
  } catch {
    // read as what it is: no list
  }
  const list = readKeyList(value);
  return list.ok ? list.value : stopped(file, list.refusal);
}

const keys: KeyList[] = [];
for (const file of asked?.values.keys ?? []) keys.push(await keyList(file));
const means = meansWith(keys);
const read = await readPdf(await bytesOf(path), means);
if (!read.ok) stopped(path, read.refusal);
else {
  const check = await checkRecord(read.value, means);
  console.log(onPaper(checkSaid(check, read.value.pages.length, language), process.stdout.hasColors?.() ?? false));
  process.exitCode = check.standing === "unchanged" ? 0 : 1;
}
