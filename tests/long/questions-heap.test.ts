import { spawn } from "node:child_process";
import { mkdtemp, rm } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { DatabaseSync } from "node:sqlite";
import { fileURLToPath } from "node:url";
import { expect, it } from "vitest";
import { questions } from "#core/quality/index.ts";
import { cutUp, MADE } from "#functions/edge/questions/parts.ts";
import { companyFrom, planted, today } from "#infra/company/index.ts";
import { type Database, migrate } from "#infra/local/migrations.ts";
import { d1Over } from "../helpers/d1-over-sqlite.ts";
import { print } from "./ran.ts";

const JOBS = 10_000;
const COMPANY = "large";
/** An isolate of the platform has 128 MB (its own limit, from memory): of old objects, and three times the half space of young ones. */
const MOST_MB = 100;
const HALF_SPACE_MB = 8;
const program = fileURLToPath(new URL("../helpers/heap-of-questions.ts", import.meta.url));
const migrations = fileURLToPath(new URL("../../infra/migrations", import.meta.url));

async function filled(file: string): Promise<void> {
  const sqlite = new DatabaseSync(file);
  await migrate(d1Over(sqlite) as unknown as Database, migrations, "now");
  const row = sqlite.prepare("INSERT INTO observed (company, part, job, number, made, content) VALUES (?, ?, ?, 1, ?, ?)");
  sqlite.exec("BEGIN");
  for (const job of companyFrom({ seed: 1, jobs: JOBS, effects: planted(JOBS) }).jobs)
    for (const [part, content] of Object.entries(cutUp(job))) row.run(COMPANY, part, job.job, MADE, content);
  sqlite.exec("COMMIT");
  sqlite.close();
}

/** What it printed; fails with what it said when it ran out of memory. */
const ran = (file: string): Promise<string> =>
  new Promise((resolve, reject) => {
    const child = spawn(process.execPath, [
      `--max-old-space-size=${MOST_MB}`,
      `--max-semi-space-size=${HALF_SPACE_MB}`,
      program,
      file,
      COMPANY,
      today,
    ]);
    const [out, said]: [string[], string[]] = [[], []];
    child.stdout.on("data", (text: Buffer) => out.push(text.toString()));
    child.stderr.on("data", (text: Buffer) => said.push(text.toString()));
    child.once("error", reject);
    child.once("close", (code) => (code === 0 ? resolve(out.join("")) : reject(new Error(`${out.join("")}\n${said.join("")}`))));
  });

it(`every question about ${JOBS} jobs is answered, one after another with all answers held, within a heap of ${MOST_MB} MB`, async () => {
  const directory = await mkdtemp(join(tmpdir(), "asburied-heap-"));
  try {
    const file = join(directory, "rows.sqlite");
    await filled(file);
    const lines = (await ran(file))
      .trim()
      .split("\n")
      .map((line) => JSON.parse(line) as { id: string; jobs: number; characters: number; most: number });
    for (const { id, characters, most } of lines)
      print(
        `${id}, ${JOBS} jobs: ${(most / 1e6).toFixed(0)} MB of heap at most with what was not yet collected, ${(characters / 1e3).toFixed(0)} kB of answer`,
      );
    expect(lines.map(({ id, jobs }) => [id, jobs])).toEqual(questions.map(({ id }) => [id, JOBS]));
  } finally {
    await rm(directory, { recursive: true, force: true });
  }
}, 600_000);
