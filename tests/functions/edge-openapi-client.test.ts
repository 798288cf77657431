import { execFile } from "node:child_process";
import { mkdtemp, readFile, rm, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { promisify } from "node:util";
import { beforeAll, expect, inject, it } from "vitest";
import { defaultSheetJson } from "#infra/sheets/default-sheet.ts";
import { type Company, type Loose, newCompany, sha256 } from "../helpers/edge.ts";

const run = promisify(execFile);
const PHOTO = new URL("../samples/photos/camera-640.jpg", import.meta.url);
const at = (path: string): Promise<string> => readFile(new URL(`../../${path}`, import.meta.url), "utf8");

/** The README's example, as it stands there between its fences. */
const inReadme = async (): Promise<string> => /^```js\n(.*?)^```$/ms.exec(await at("README.md"))?.[1] ?? "";

let text: string;
let company: Company;
beforeAll(async () => {
  text = await inReadme();
  company = await newCompany(inject("edge"), inject("operatorKey"));
  expect((await company.office.post("/api/company/sheets", defaultSheetJson)).status).toBe(201);
});

it("the README's client is one page of plain Node", async () => {
  expect(text.trimEnd().split("\n").length).toBeLessThanOrEqual(40);
  const imported = [...text.matchAll(/from "([^"]+)"/g)].map(([, name]) => name);
  expect(imported).toEqual(["node:crypto", "node:fs/promises"]);
  expect(text).toBe(await at("infra/client/example.mjs"));
});

it("a stranger's client opens a job, sends a reading and a photo, and reads the clearance", async () => {
  const { link } = (await company.owner.post(`/api/people/${company.people.office}/links`)).body;
  const folder = await mkdtemp(join(tmpdir(), "asburied-client-"));
  try {
    const file = join(folder, "client.mjs");
    await writeFile(file, text);
    const { stdout } = await run(process.execPath, [file, `${inject("edge")}${link}`, PHOTO.pathname], { cwd: folder });
    const lines = stdout.trimEnd().split("\n");
    expect(lines.slice(0, 2)).toEqual([expect.stringMatching(/^[0-9a-f]{32} taken$/), expect.stringMatching(/^[0-9a-f]{32} taken$/)]);
    expect(lines[2]).toMatch(/^backfill-basin: not yet, \d+ missing$/);
    const { jobs } = (await company.office.get("/api/jobs")).body;
    const found = jobs.find(({ title }: { title: string }) => title === "Front yard fall");
    const job = (await company.office.get(`/api/jobs/${found.job}`)).body;
    const ids = lines.slice(0, 2).map((line) => line.split(" ")[0] ?? "");
    const { entries } = (await company.office.get(`/api/jobs/${found.job}/ledger`)).body;
    const own = entries.filter(({ envelope }: Loose) => ids.includes(envelope.id));
    const said = own.map(({ envelope, body }: Loose) => [envelope.id, envelope.kind, body.what.content.item]);
    expect(said).toEqual([
      [ids[0], "reading-taken", "gap-along"],
      [ids[1], "picture-taken", "bubble-and-lid"],
    ]);
    // Each is what some finding rests on.
    for (const id of ids) expect(job.findings.some(({ entries: of }: Loose) => of.includes(id))).toBe(true);
    expect(Object.keys(job.photos)).toEqual([sha256(await readFile(PHOTO))]);
  } finally {
    await rm(folder, { recursive: true, force: true });
  }
});

it("it says what was refused, with its place and how to fix it", async () => {
  const { link } = (await company.owner.post(`/api/people/${company.people.office}/links`)).body;
  const folder = await mkdtemp(join(tmpdir(), "asburied-client-"));
  try {
    const file = join(folder, "client.mjs");
    await writeFile(file, text.replace('"buried-basin"', '"no-such-sheet"'));
    const failed = run(process.execPath, [file, `${inject("edge")}${link}`, PHOTO.pathname], { cwd: folder });
    await expect(failed).rejects.toThrow(/entry-unknown-version at sheet: .*take it over/);
  } finally {
    await rm(folder, { recursive: true, force: true });
  }
});
