import { readFileSync } from "node:fs";
import { copyFile, mkdtemp, readdir, rm } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { DatabaseSync } from "node:sqlite";
import { expect, test } from "vitest";
import { namedObjects } from "#infra/backup/named-objects.ts";
import { type Database, migrate } from "#infra/local/migrations.ts";
import { d1Over } from "../../helpers/d1-over-sqlite.ts";
import { migrations } from "../../helpers/stack-folder.ts";

test("parts that were blurred before others are found in the ledgers when their table is made, and backed up", async () => {
  const database = new DatabaseSync(":memory:");
  database.exec(readFileSync(new URL("../../samples/database/0012.sql", import.meta.url), "utf8"));
  const all = (sql: string) => database.prepare(sql).all() as Record<string, string>[];
  const before = await mkdtemp(join(tmpdir(), "asburied-migrations-"));
  for (const name of (await readdir(migrations)).filter((one) => one < "0021")) await copyFile(join(migrations, name), join(before, name));
  await migrate(d1Over(database) as unknown as Database, before, "2026-11-28T00:00:00.000Z");
  await rm(before, { recursive: true });
  const [blurred] = all("SELECT company, sha256, digest FROM blurred");
  // another blur, as it was written then: over the one before
  const later = "e".repeat(64);
  database.prepare("UPDATE blurred SET digest = ?").run(later);
  await migrate(d1Over(database) as unknown as Database, migrations, "2026-11-29T00:00:00.000Z");
  expect(all("SELECT company, sha256, digest FROM blurred_before")).toEqual([blurred]);
  const keys = namedObjects(database).map(({ key }) => key);
  for (const digest of [blurred?.digest, later])
    for (const name of ["screen", "print", "column"])
      expect(keys).toContain(`${blurred?.company}/renditions/${blurred?.sha256}/${name}-${digest}.jpg`);
});
