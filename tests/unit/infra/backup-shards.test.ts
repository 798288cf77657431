import { copyFile, mkdtemp, rm } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { DatabaseSync } from "node:sqlite";
import { afterAll, beforeAll, expect, test } from "vitest";
import { checkBackup, DAY_MS, restoreBackup, takeBackup } from "#infra/backup/index.ts";
import { secretsIn } from "#infra/local/index.ts";
import { type Database, migrate } from "#infra/local/migrations.ts";
import { d1Over } from "../../helpers/d1-over-sqlite.ts";
import { allRows, D1_PLACE, migrations, StackFolder } from "../../helpers/stack-folder.ts";

const NOW = Date.UTC(2026, 10, 28, 18, 30);
const SECOND_PLACE = D1_PLACE.replace("5a5a", "6b6b");
const log = (): void => {};
let root = "";
let stack: StackFolder;
let second: DatabaseSync;
let secret = "";
const take = (now = NOW, rowsTaken = async () => {}) =>
  takeBackup({ directory: stack.directory, out: join(root, "backups"), clock: () => now, log, rowsTaken });

beforeAll(async () => {
  root = await mkdtemp(join(tmpdir(), "asburied-shards-"));
  stack = await StackFolder.made(join(root, "stack"));
  secret = (await secretsIn(stack.directory)).sealSecret;
  second = new DatabaseSync(join(stack.directory, "edge", SECOND_PLACE));
  await migrate(d1Over(second) as unknown as Database, migrations, "2026-11-28T00:00:00.000Z");
  const company = (id: string): string => `INSERT INTO company VALUES ('${id}', '${id}', 'UTC', 'inch', 'en', 1);
    INSERT INTO person (company, id, name, role, came) VALUES ('${id}', 'p1', 'Nobody Nowhere', 'crew', 1);`;
  stack.database.exec(`${company("c1")} INSERT INTO placed VALUES ('c2', 'DB_2', 1)`);
  second.exec(company("c2"));
  await stack.enter("e1", { text: "of the first" });
  second.exec("INSERT INTO job VALUES ('c2', 'j2', 1)");
});
afterAll(async () => {
  stack.database.close();
  second.close();
  await rm(root, { recursive: true, force: true });
});

test("every database is in the backup and comes back to its place; what was erased since is taken out where its company lies", async () => {
  const taken = await take();
  expect(await checkBackup(taken.folder, secret)).toEqual({ list: taken.list, faults: [] });
  expect(taken.list.further?.map(({ place }) => place)).toEqual([SECOND_PLACE]);
  second.exec("UPDATE person SET name = 'without a name'; INSERT INTO erased VALUES ('c2', 'person', 'p1', 'without a name', 1, NULL)");
  await take(NOW + 1000);
  const directory = join(root, "back");
  const restored = await restoreBackup({
    from: taken.folder,
    directory,
    secret,
    migrations,
    clock: () => NOW + DAY_MS,
    log,
  });
  expect(restored.erased).toBe(1);
  for (const place of [D1_PLACE, SECOND_PLACE])
    expect(allRows(join(directory, "edge", place))).toEqual(allRows(join(stack.directory, "edge", place)));
});

test("a byte of the second database that is another is found", async () => {
  const taken = await take(NOW + 2000);
  await copyFile(join(taken.folder, "database.sqlite"), join(taken.folder, "database-2.sqlite"));
  expect((await checkBackup(taken.folder, secret)).faults).toEqual([
    { file: "database-2.sqlite", how: "has other bytes than the list says" },
  ]);
});

test("none is taken while a company is on its way, also when it began meanwhile", async () => {
  const begin = (): void =>
    stack.database.exec("INSERT INTO moving VALUES ('c2', 'DB_2', 'DB', 'copying', 'h', 0, '[]', 0, 1, NULL, NULL)");
  await expect(take(NOW + 3000, async () => begin())).rejects.toThrow("A company is being moved");
  await expect(take(NOW + 4000)).rejects.toThrow("A company is being moved");
});
