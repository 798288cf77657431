import "../node-version.mjs";
import { holds, type Line, table } from "./line.ts";
import { FIVE_HUNDRED, mediaMemory } from "./media-memory.ts";
import { mediaTime, TWELVE_MEGAPIXELS } from "./media-time.ts";
import { phone } from "./phone.ts";

/** Every bench by its name. Each compares two ways in one run: a ratio holds on any machine, a time does not. */
const benches: Readonly<Record<string, () => Promise<readonly Line[]>>> = {
  media: async () => [...(await mediaTime(TWELVE_MEGAPIXELS)), ...(await mediaMemory(FIVE_HUNDRED))],
  phone,
};

const asked = process.argv.slice(2);
const names = asked.length > 0 ? asked : Object.keys(benches);
const unknown = names.filter((name) => !(name in benches));
if (unknown.length > 0) {
  console.error(`No bench is called ${unknown.join(", ")}. There are: ${Object.keys(benches).join(", ")}.`);
  process.exit(1);
}

const lines: Line[] = [];
for (const name of names) lines.push(...((await benches[name]?.()) ?? []));
console.log(table(lines));
process.exitCode = lines.every(holds) ? 0 : 1;
