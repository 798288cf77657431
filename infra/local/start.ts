import "../node-version.mjs";
import { existsSync } from "node:fs";
import { readFile, rename, writeFile } from "node:fs/promises";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { type DemoSummary, linesOf, runDemo } from "./demo-result.ts";
import { RESTORED, startUntilStopped } from "./index.ts";

/** `npm start`: the stack in `data/`, filled with the demo company when it is empty, until Ctrl-C. */
const directory = process.env.ASBURIED_DATA ?? fileURLToPath(new URL("../../data", import.meta.url));
const summaryFile = join(directory, "demo.json");
const say = (line: string): void => console.log(line);

const { stack, isStopping } = await startUntilStopped(
  { directory, ports: { edge: Number(process.env.PORT ?? 8787) }, demoLinks: true, log: say },
  () => say("Stopping."),
);

const remembered = async (): Promise<DemoSummary | undefined> =>
  existsSync(summaryFile) ? (JSON.parse(await readFile(summaryFile, "utf8")) as DemoSummary) : undefined;

/** Of a folder that was read back from a backup: it is filled already, and links are in no backup. */
const readBack = async (): Promise<DemoSummary | undefined> => {
  if (!existsSync(join(directory, RESTORED))) return undefined;
  const headers = { authorization: `Operator ${stack.secrets.operatorKey}`, "x-asburied": "1" };
  const answer = await fetch(`${stack.edge}/api/demo/links`, { method: "POST", headers });
  // without the demo company its people sign in as they did before
  return { links: answer.ok ? ((await answer.json()) as DemoSummary["links"]) : {} };
};

const fill = async (): Promise<DemoSummary> => {
  say("Filling the empty stack with the demo company.");
  const { pdf: bytes, links } = await runDemo({ edge: stack.edge, operatorKey: stack.secrets.operatorKey, log: say, oldPond: "filled" });
  const pdf = join(directory, "record.pdf");
  await writeFile(pdf, bytes);
  const whole: DemoSummary = { links, pdf };
  // written last and in one go: it stands for a demo that went through
  await writeFile(`${summaryFile}.part`, JSON.stringify(whole, undefined, 2));
  await rename(`${summaryFile}.part`, summaryFile);
  return whole;
};

try {
  const summary = (await remembered()) ?? (await readBack()) ?? (await fill());
  say("");
  for (const line of linesOf(summary, stack.origin)) say(line);
  say(`\nServing on ${stack.origin} until Ctrl-C. Everything is kept in ${directory}.`);
} catch (error) {
  // Ctrl-C while it was being filled: everything is being stopped already
  if (isStopping()) await new Promise(() => {});
  console.error(`The demo could not be filled in: ${(error as Error).message}`);
  await stack.stop();
  process.exit(1);
}
