import { existsSync } from "node:fs";
import { readFile, writeFile } from "node:fs/promises";
import { join } from "node:path";
import { inject } from "vitest";
import { Client, type DemoResult, runDemo } from "#infra/demo/index.ts";

export interface TheDemo extends DemoResult {
  /** A whole address that signs one of its people in, once. */
  readonly newLink: (role: keyof DemoResult["links"]) => Promise<string>;
}

/** Bytes go into JSON as what they are. */
const packed = (_name: string, value: unknown): unknown =>
  value instanceof Uint8Array ? { bytes: Buffer.from(value).toString("base64") } : value;
const unpacked = (_name: string, value: { bytes?: unknown } | null): unknown =>
  typeof value === "object" && typeof value?.bytes === "string" ? new Uint8Array(Buffer.from(value.bytes, "base64")) : value;

/** Makes one-time links for the demo's people, as its company owner does. */
function newLinks(edge: string, links: DemoResult["links"]): TheDemo["newLink"] {
  const signedIn = (role: keyof DemoResult["links"]): Promise<Client> => new Client(edge).signIn(links[role]);
  return async (role) => {
    const { person } = await (await signedIn(role)).get<{ person: string }>("/api/session");
    const { link } = await (await signedIn("owner")).send<{ link: string }>("POST", `/api/people/${person}/links`);
    return new URL(link, edge).href;
  };
}

/**
 * The demo company on this stack, filled by the first test file that asks for it: filling it is a minute of both cores. Who changes
 * it leaves what the files after it in `vitest.config.ts` look at.
 */
export async function theDemo(): Promise<TheDemo> {
  const edge = inject("edge");
  const file = join(inject("stackDirectory"), "demo.json");
  if (!existsSync(file)) {
    const demo = await runDemo({ edge, operatorKey: inject("operatorKey"), log: () => {} });
    await writeFile(file, JSON.stringify(demo, packed));
  }
  const demo = JSON.parse(await readFile(file, "utf8"), unpacked) as DemoResult;
  return { ...demo, newLink: newLinks(edge, demo.links) };
}
