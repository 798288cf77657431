import "../node-version.mjs";
import { fileURLToPath } from "node:url";
import { parseArgs } from "node:util";
import { runningIn, secretsIn } from "../local/index.ts";
import { move, NotMoved } from "./run.ts";

/**
 * `npm run move -- --company ID --to DB_2`: moves a company into another database while its phones go on sending. With `--remove` in a
 * second run, what it left behind goes. Of the local stack in `data/`; of any other with `--edge ADDRESS` and its key in OPERATOR_KEY.
 * Exit 0: done; 1: not done, with the reason; 2: not understood. Broken off, run it again.
 */
const usage = "Say which company and whither: npm run move -- --company ID --to DB_2 (then the same with --remove).";

const asked = (() => {
  try {
    const text = { type: "string" } as const;
    return parseArgs({ options: { company: text, to: text, edge: text, remove: { type: "boolean" } } }).values;
  } catch (error) {
    console.error((error as Error).message);
    return {};
  }
})();
const { company, to, edge, remove = false } = asked;
if (!company || !to) {
  console.error(usage);
  process.exit(2);
}

async function reached(): Promise<{ readonly edge: string; readonly operatorKey: string }> {
  if (edge !== undefined) return { edge: edge.replace(/\/$/, ""), operatorKey: process.env.OPERATOR_KEY ?? "" };
  const directory = process.env.ASBURIED_DATA ?? fileURLToPath(new URL("../../data", import.meta.url));
  const running = runningIn(directory);
  if (running === undefined) throw new NotMoved(`No stack runs in ${directory}. Start it (npm start), or name another with --edge.`);
  return { edge: running.edge, operatorKey: (await secretsIn(directory)).operatorKey };
}

try {
  const stand = await move({ ...(await reached()), company, to, remove, log: (line) => console.log(line) });
  const { closed, switched } = stand;
  const shut = closed !== undefined && switched !== undefined ? ` Its writes were refused for ${switched - closed} ms.` : "";
  console.log(
    stand.stage === "there"
      ? `${company} lies in ${to}, and nothing of it elsewhere.`
      : `${company} lies in ${to}.${shut} What it left behind answers nobody; it goes with --remove.`,
  );
} catch (error) {
  console.error((error as Error).message);
  process.exitCode = 1;
}
