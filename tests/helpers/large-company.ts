import { mkdtemp, rm, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { Miniflare } from "miniflare";
import type { JobObserved } from "#core/quality/index.ts";
import { BASE, cutUp, MADE, observedParts } from "#functions/edge/questions/parts.ts";
import { bundleEntry } from "#infra/build/index.ts";
import { type EdgePlan, miniflareOptions } from "#infra/local/edge-plan.ts";
import { type Database, migrate } from "#infra/local/migrations.ts";

const here = (path: string): string => fileURLToPath(new URL(path, import.meta.url));

export type Write = readonly [sql: string, ...values: readonly (string | number | null)[]];

/** An edge of its own whose database is written to and read past its routes, in the same isolate. */
export interface LargeEdge {
  readonly url: string;
  readonly operatorKey: string;
  write(list: readonly Write[]): Promise<void>;
  /** The jobs' rows as the questions' adapter keeps them, none behind. */
  fill(company: string, jobs: readonly JobObserved[]): Promise<void>;
  /** Jobs that lie there: entries, findings, rows of every kind and photos used, each in its place and nothing in it to be read. */
  history(company: string, jobs: number): Promise<void>;
  /** Reads what answers to questions about some parts are made of, by the adapters' own statements and pages, and does nothing with it. */
  bare(company: string, parts: readonly string[]): Promise<{ readonly jobs: number; readonly characters: number }>;
  stop(): Promise<void>;
}

/** Beside the routes: `/bare` writes a list of statements, or reads what the company itself has and pages of rows, and counts characters. */
const ENTRY = `const edge = edgeOf(routes, () => Date.now());
const bare = async (request, { DB }) => {
  const { write, company, parts } = await request.json();
  const bound = (text, values) => DB.prepare(text).bind(...values);
  if (write) return Response.json({ written: (await DB.batch(write.map(([text, ...values]) => bound(text, values)))).length });
  await DB.batch([...knownStatements(DB, companyPlace(company), companyFactKinds)]);
  let [jobs, characters] = [0, 0];
  for (let after = ""; ; ) {
    const lists = await DB.batch(parts.map((part) => bound(PAGE_OF, [company, part, after, PAGE])));
    for (const { results } of lists) for (const { content } of results) characters += content.length;
    const first = lists[0].results;
    jobs += first.length;
    if (first.length < PAGE) return Response.json({ jobs, characters });
    after = first.at(-1).job;
  }
};
export default {
  ...edge,
  fetch: (request, environment, context) =>
    new URL(request.url).pathname === "/bare" ? bare(request, environment) : edge.fetch(request, environment, context),
};`;

const nowhere = "http://127.0.0.1:9";
const bindings = {
  STORE_ENDPOINT: nowhere,
  STORE_REGION: "auto",
  STORE_BUCKET: "b",
  STORE_ACCESS_KEY: "a",
  STORE_SECRET_KEY: "s",
  MEDIA_URL: nowhere,
  PRINT_URL: nowhere,
  SERVICE_SECRET: "secret",
  OPERATOR_KEY: "key",
};

const JOBS = "INSERT INTO job (company, id, opened) SELECT ?1, value->>0, value->>1 FROM json_each(?2)";
const ROWS = `INSERT INTO observed (company, part, job, number, made, content)
  SELECT ?1, value->>0, value->>1, 1, ?2, value->>2 FROM json_each(?3)`;

/** Entries, and photos used, of each job of a history; rows are cut short, as only how many there are and where they stand matters. */
const EACH = 20;
const COUNTED = `WITH RECURSIVE counted (n) AS (SELECT ?2 UNION ALL SELECT n + 1 FROM counted WHERE n + 1 < ?3),
  each (k) AS (SELECT 1 UNION ALL SELECT k + 1 FROM each WHERE k < ${EACH})`;
const OLD = "printf('old-%06d', n)";
const ID = "printf('%032x', n * 1000 + k)";
const HASH = "printf('%064x', n * 1000 + k)";
const history = [
  `INSERT INTO job (company, id, opened) ${COUNTED} SELECT ?1, ${OLD}, n FROM counted`,
  `INSERT INTO entry (company, job, number, id, kind, digest, hash, envelope, body)
    ${COUNTED} SELECT ?1, ${OLD}, k, ${ID}, 'note-for-record', ${HASH}, ${HASH}, '{}', '{}' FROM counted, each`,
  `INSERT INTO finding (company, job, number, rules, computed) ${COUNTED} SELECT ?1, ${OLD}, ${EACH}, 1, printf('%02000d', n) FROM counted`,
  `INSERT INTO after_work (company, job, number, content) ${COUNTED} SELECT ?1, ${OLD}, ${EACH}, printf('%01000d', n) FROM counted`,
  `INSERT INTO listed (company, job, number, rules, content) ${COUNTED} SELECT ?1, ${OLD}, ${EACH}, 1, '{"title":"","coverings":[],"buried":{"lines":[],"unlooked":[]}}' FROM counted`,
  `INSERT INTO photo_use (company, sha256, job) ${COUNTED} SELECT ?1, ${HASH}, ${OLD} FROM counted, each`,
];
const HISTORY_ROWS = `INSERT INTO observed (company, part, job, number, made, content)
  ${COUNTED} SELECT ?1, p.value, ${OLD}, ${EACH}, ?4, printf('%01000d', n) FROM counted, json_each(?5) AS p`;
const HISTORY_TOGETHER = 2_000;
/** Jobs whose rows go into one statement: D1 takes 2 MB a value. */
const TOGETHER = 20;

const pieces = <T>(list: readonly T[], size: number): readonly (readonly T[])[] =>
  Array.from({ length: Math.ceil(list.length / size) }, (_, i) => list.slice(i * size, (i + 1) * size));

export async function largeEdge(): Promise<LargeEdge> {
  const directory = await mkdtemp(join(tmpdir(), "asburied-large-"));
  const source = join(directory, "worker.ts");
  const imports = Object.entries({
    "functions/edge/edge.ts": "edgeOf",
    "functions/edge/routes/index.ts": "routes",
    "functions/edge/adapters/observed.ts": "PAGE, PAGE_OF",
    "functions/edge/adapters/company-known.ts": "knownStatements",
    "functions/edge/company/change.ts": "companyPlace",
    "src/wire/index.ts": "companyFactKinds",
  }).map(([file, names]) => `import { ${names} } from ${JSON.stringify(here(`../../${file}`))};`);
  await writeFile(source, [...imports, ENTRY].join("\n"));
  const worker = await bundleEntry(source, join(directory, "large.js"));
  const plan: EdgePlan = { port: 0, worker, persist: directory, migrations: "", app: "", sweepEvery: 0, bindings };
  const miniflare = new Miniflare(miniflareOptions(plan));
  const url = String(await miniflare.ready).replace(/\/$/, "");
  await migrate((await miniflare.getD1Database("DB", "edge")) as unknown as Database, here("../../infra/migrations"), "now");
  const ask = async <T>(body: unknown): Promise<T> => {
    const answer = await fetch(`${url}/bare`, { method: "POST", body: JSON.stringify(body), headers: { connection: "close" } });
    if (!answer.ok) throw new Error(await answer.text());
    return (await answer.json()) as T;
  };
  const write = async (list: readonly Write[]): Promise<void> => void (await ask({ write: list }));
  return {
    url,
    operatorKey: bindings.OPERATOR_KEY,
    write,
    async fill(company, jobs) {
      for (const some of pieces(jobs, TOGETHER)) {
        const rows = some.flatMap((job) => Object.entries(cutUp(job)).map(([part, content]) => [part, job.job, content]));
        await write([
          [JOBS, company, JSON.stringify(some.map(({ job, opened }) => [job, opened]))],
          [ROWS, company, MADE, JSON.stringify(rows)],
        ]);
      }
    },
    async history(company, jobs) {
      for (let from = 0; from < jobs; from += HISTORY_TOGETHER) {
        const until = Math.min(jobs, from + HISTORY_TOGETHER);
        const parts = JSON.stringify([BASE, ...observedParts]);
        await write([...history.map((sql): Write => [sql, company, from, until]), [HISTORY_ROWS, company, from, until, MADE, parts]]);
      }
    },
    bare: (company, parts) => ask({ company, parts: [BASE, ...parts] }),
    async stop() {
      await miniflare.dispose();
      await rm(directory, { recursive: true, force: true });
    },
  };
}
