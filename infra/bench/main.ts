import "../node-version.mjs";
import { writeFile } from "node:fs/promises";
import { availableParallelism } from "node:os";
import { parseArgs } from "node:util";
import { append } from "./append.ts";
import { card, EVERY_TILT } from "./card.ts";
import { core, THREE_HUNDRED } from "./core.ts";
import { flood, THOUSAND } from "./flood.ts";
import { intake } from "./intake.ts";
import { holds, type Line, ratio, table } from "./line.ts";
import { FIVE_HUNDRED, mediaMemory } from "./media-memory.ts";
import { mediaTime, TWELVE_MEGAPIXELS } from "./media-time.ts";
import { phone } from "./phone.ts";
import { record, SIXTY } from "./record.ts";

/** Every bench by its name. Each compares two ways in one run: a ratio holds on any machine, a time does not. */
const benches: Readonly<Record<string, () => Promise<readonly Line[]>>> = {
  core: () => core(THREE_HUNDRED),
  append,
  intake,
  record: () => record(SIXTY),
  flood: () => flood(THOUSAND),
  media: async () => [...(await mediaTime(TWELVE_MEGAPIXELS)), ...(await mediaMemory(FIVE_HUNDRED))],
  phone,
  card: () => card(EVERY_TILT),
};

const { values, positionals } = parseArgs({ options: { json: { type: "string" } }, allowPositionals: true });
const names = positionals.length > 0 ? positionals : Object.keys(benches);
const unknown = names.filter((name) => !(name in benches));
if (unknown.length > 0) {
  console.error(`No bench is called ${unknown.join(", ")}. There are: ${Object.keys(benches).join(", ")}.`);
  process.exit(1);
}

const lines: (Line & { readonly bench: string })[] = [];
for (const name of names) {
  const measured = (await benches[name]?.()) ?? [];
  lines.push(...measured.map((line) => ({ bench: name, ...line })));
  // at once, so that a long run has something to show
  if (names.length > 1) console.log(table(measured));
}
if (names.length > 1) console.log("");
console.log(table(lines));
if (values.json !== undefined) {
  const rows = lines.map((line) => ({ ...line, ratio: ratio(line), ...(line.atMost === undefined ? {} : { kept: holds(line) }) }));
  const machine = { cores: availableParallelism(), node: process.versions.node };
  await writeFile(values.json, `${JSON.stringify({ machine, lines: rows }, undefined, 2)}\n`);
}
process.exitCode = lines.every(holds) ? 0 : 1;
