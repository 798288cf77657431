import { createHash } from "node:crypto";
import { copyFile, cp, mkdtemp, readdir, readFile, rm, stat, truncate, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { DatabaseSync } from "node:sqlite";
import { afterAll, beforeAll, beforeEach, describe, expect, test } from "vitest";
import { originalKey } from "#functions/shared/index.ts";
import { checkBackup, DAY_MS, KEPT_DAYS, restoreBackup, type Taken, takeBackup } from "#infra/backup/index.ts";
import { sealOf } from "#infra/backup/seal.ts";
import { secretsIn } from "#infra/local/index.ts";
import { sha256 } from "../../helpers/edge.ts";
import { allRows, D1_PLACE, inStore, migrations, StackFolder } from "../../helpers/stack-folder.ts";
import { verifyLedger } from "../../helpers/verifier.ts";

const NOW = Date.UTC(2026, 10, 28, 18, 30);
const log = (): void => {};
let root = "";
let stack: StackFolder;
let secret = "";
let out = "";
let taken: Taken;
const picture = (text: string): Uint8Array => new TextEncoder().encode(`picture ${text} ${"x".repeat(5000)}`);

const take = (now: number, more: { readonly rowsTaken?: () => Promise<void>; readonly out?: string } = {}) =>
  takeBackup({ directory: stack.directory, out, clock: () => now, log, ...more });
const restore = (directory: string, more: Partial<Parameters<typeof restoreBackup>[0]> = {}) =>
  restoreBackup({ from: taken.folder, directory, secret, migrations, clock: () => NOW + DAY_MS, log, ...more });

beforeAll(async () => {
  root = await mkdtemp(join(tmpdir(), "asburied-backup-"));
  stack = await StackFolder.made(join(root, "stack"));
  secret = (await secretsIn(stack.directory)).sealSecret;
  await stack.enter("e1", { text: "one" });
  await stack.enter("e2", { text: "two" }, { name: "Nobody Nowhere" });
  await stack.photo(picture("first"));
  // rows that hold the name beside the ledger
  stack.database.exec(`INSERT INTO person (company, id, name, role, came) VALUES ('c1', 'p1', 'Nobody Nowhere', 'crew', 1);
    INSERT INTO site (company, id, number, content) VALUES ('c1', 's1', 1, '{"address":"Nobody Nowhere"}');
    INSERT INTO old_warranty (company, number, part, content) VALUES ('c1', 'A/1', 'Pump', '{"customer":"Nobody Nowhere"}');
    INSERT INTO released_record (hash, company, record, receiver, released) VALUES ('h1', 'c1', 'r1', 'Nobody Nowhere', 1)`);
  out = join(root, "backups");
  taken = await take(NOW);
});
afterAll(async () => {
  stack.database.close();
  await rm(root, { recursive: true, force: true });
});

describe("a backup", () => {
  test("holds the rows and every object that they name, each with its digest", async () => {
    expect(taken.folder).toBe(join(out, "2026-11-28T18-30-00.000Z"));
    const sha = sha256(picture("first"));
    expect(taken.list.objects).toEqual([
      { key: `c1/originals/${sha}`, type: "image/jpeg", name: `objects/c1/originals/${sha}`, bytes: picture("first").length, sha256: sha },
    ]);
    expect(taken.list.ledgers).toEqual([{ company: "c1", job: "j1", number: 2, hash: expect.stringMatching(/^[0-9a-f]{64}$/) }]);
    expect(taken.list.until).toBe(NOW + 35 * DAY_MS);
    expect(allRows(join(taken.folder, "database.sqlite"))).toEqual(allRows(join(stack.directory, "edge", D1_PLACE)));
    expect(await checkBackup(taken.folder, secret)).toEqual({ list: taken.list, faults: [] });
  });

  test("holds no secret, and nobody else may read it", async () => {
    const secrets = Object.values(await secretsIn(stack.directory));
    for (const name of (await readdir(taken.folder, { recursive: true, withFileTypes: true })).filter((one) => one.isFile())) {
      const text = await readFile(join(name.parentPath, name.name), "latin1");
      expect(secrets.filter((one) => text.includes(one))).toEqual([]);
    }
    expect((await stat(taken.folder)).mode & 0o777).toBe(0o700);
  });

  test("has nothing that was acknowledged after its rows, and lacks nothing that they name", async () => {
    const other = join(root, "while-in-use");
    let later = "";
    const one = await takeBackup({
      directory: stack.directory,
      out: other,
      clock: () => NOW,
      log,
      rowsTaken: async () => {
        later = await stack.photo(picture("later"));
        await stack.enter("e3", { text: "three" });
      },
    });
    expect(one.list.ledgers[0]?.number).toBe(2);
    expect(one.list.objects.map(({ sha256: sha }) => sha)).toEqual([sha256(picture("first"))]);
    stack.database.prepare("DELETE FROM photo WHERE sha256 = ?").run(later);
    expect((await checkBackup(one.folder, secret)).faults).toEqual([]);
  });

  test("is none where an object that the rows name is missing or has other bytes, and says which", async () => {
    const [gone, other] = [await stack.photo(picture("gone")), await stack.photo(picture("other"))];
    await stack.stored(async (store) => {
      await store.remove(originalKey("c1", gone));
      await store.put(originalKey("c1", other), picture("changed"), { length: picture("changed").length, type: "image/jpeg" });
    });
    const folder = join(root, "faulty");
    await expect(takeBackup({ directory: stack.directory, out: folder, clock: () => NOW, log })).rejects.toThrow(
      new RegExp(`originals/${other}: its bytes in the store are not those that its name says\\n.*originals/${gone}: the rows name it`),
    );
    expect(await readdir(folder)).toEqual([]);
    stack.database.prepare("DELETE FROM photo WHERE sha256 IN (?, ?)").run(gone, other);
  });

  test("goes on where a photo is erased while the objects are copied", async () => {
    const sha = await stack.photo(picture("erased"));
    const one = await takeBackup({
      directory: stack.directory,
      out: join(root, "erased-meanwhile"),
      clock: () => NOW,
      log,
      rowsTaken: async () => {
        stack.database.prepare("DELETE FROM photo WHERE sha256 = ?").run(sha);
        stack.database.prepare("INSERT INTO erased (company, kind, ref, at) VALUES ('c1', 'object', ?, 1)").run(originalKey("c1", sha));
        await stack.stored((store) => store.remove(originalKey("c1", sha)));
      },
    });
    expect(one.list.gone).toEqual([originalKey("c1", sha)]);
    const to = join(root, "restored-without");
    await restore(to, { from: one.folder });
    expect((await inStore(to, (store) => store.head(originalKey("c1", sha)))).ok).toBe(false);
    expect(allRows(join(to, "edge", D1_PLACE)).photo).toHaveLength(1);
    stack.database.exec("DELETE FROM erased");
  });
});

describe("a backup that is partial or altered is refused with what is wrong", () => {
  let copy = "";
  beforeEach(async () => {
    copy = await mkdtemp(join(root, "altered-"));
    await cp(taken.folder, copy, { recursive: true });
  });
  const faults = async (with_: string | undefined = secret) => (await checkBackup(copy, with_)).faults;
  const object = (): string => taken.list.objects[0]?.name ?? "";
  const rewrite = async (change: (list: Record<string, unknown>) => void): Promise<Uint8Array> => {
    const list = JSON.parse(await readFile(join(copy, "list.json"), "utf8"));
    change(list);
    const text = JSON.stringify(list);
    await writeFile(join(copy, "list.json"), text);
    return new TextEncoder().encode(text);
  };

  test("a file that is missing, cut off, altered or too many", async () => {
    await rm(join(copy, object()));
    await truncate(join(copy, "database.sqlite"), 4096);
    await writeFile(join(copy, "more.txt"), "more");
    const size = taken.list.database.bytes;
    expect(await faults()).toEqual([
      { file: "database.sqlite", how: `has 4096 bytes where the list says ${size}` },
      { file: object(), how: "is missing" },
      { file: "more.txt", how: "is not in the list" },
    ]);
    const to = join(root, "never");
    await expect(restore(to, { from: copy })).rejects.toThrow(/is not whole:\n {2}database.sqlite has 4096 bytes.*\n.*is missing\.\n/);
    await expect(stat(to)).rejects.toThrow("ENOENT");
  });

  test("one byte", async () => {
    const bytes = await readFile(join(copy, object()));
    bytes[100] = (bytes[100] ?? 0) ^ 1;
    await writeFile(join(copy, object()), bytes);
    expect(await faults()).toEqual([{ file: object(), how: "has other bytes than the list says" }]);
  });

  test("the list, alone and together with its digest", async () => {
    const bytes = await rewrite((list) => {
      list.objects = [];
    });
    expect(await faults()).toEqual([{ file: "list.json", how: "is not as it was written: its digest differs from the one in its seal" }]);
    const seal = JSON.parse(await readFile(join(copy, "list-seal.json"), "utf8"));
    await writeFile(join(copy, "list-seal.json"), JSON.stringify({ ...seal, sha256: createHash("sha256").update(bytes).digest("hex") }));
    expect(await faults()).toEqual([
      { file: "list.json", how: "was changed together with its digest: the mark of the secret does not fit" },
    ]);
    // who does not hold the secret can make a seal only with another one
    await writeFile(join(copy, "list-seal.json"), JSON.stringify(sealOf(bytes, "another secret")));
    expect(await faults()).toEqual([
      { file: "list.json", how: "was sealed with another secret than the one given, or its seal was changed" },
    ]);
  });

  test("a list that was never finished, and one that leads out of its folder", async () => {
    await rm(join(copy, "list.json"));
    expect(await faults()).toEqual([{ file: "list.json", how: "is missing: this is no backup, or one that was never finished" }]);
    await copyFile(join(taken.folder, "list.json"), join(copy, "list.json"));
    const bytes = await rewrite((list) => {
      list.place = "../../outside.sqlite";
    });
    await writeFile(join(copy, "list-seal.json"), JSON.stringify(sealOf(bytes, secret)));
    expect(await faults()).toEqual([{ file: "list.json", how: "cannot be read as the list of a backup" }]);
  });
});

describe("reading back", () => {
  test("into an empty folder: the same rows, the same bytes, other keys but the one secret", async () => {
    const to = join(root, "restored");
    const { list, erased } = await restore(to, { from: out });
    expect([list, erased]).toEqual([taken.list, 0]);
    expect(allRows(join(to, "edge", D1_PLACE))).toEqual(allRows(join(taken.folder, "database.sqlite")));
    const { key, type } = taken.list.objects[0] ?? { key: "", type: "" };
    const found = await inStore(to, async (store) => {
      const got = await store.get(key);
      return got.ok ? { type: got.value.type, bytes: new Uint8Array(await new Response(got.value.stream).arrayBuffer()) } : undefined;
    });
    expect(found).toEqual({ type, bytes: picture("first") });
    const [before, after] = [await secretsIn(stack.directory), await secretsIn(to)];
    expect(after.sealSecret).toBe(before.sealSecret);
    expect(after.operatorKey).not.toBe(before.operatorKey);
  });

  test("refuses a folder that is not empty, a wrong secret, another program's migrations, and a backup past its day", async () => {
    const filled = join(root, "restored");
    await expect(restore(filled)).rejects.toThrow("is not empty");
    const to = join(root, "refused");
    await expect(restore(to, { secret: "another" })).rejects.toThrow("list.json was sealed with another secret");
    await expect(restore(to, { migrations: join(root, "none") })).rejects.toThrow("0001-first.sql, which this version");
    await expect(restore(to, { clock: () => NOW + KEPT_DAYS * DAY_MS + 1 })).rejects.toThrow("older than 35 days");
    await expect(stat(to)).rejects.toThrow("ENOENT");
  });

  test("without the secret it is read back, and says what that means", async () => {
    const said: string[] = [];
    await restore(join(root, "secretless"), { secret: undefined, log: (line) => said.push(line) });
    expect(said.join()).toContain("nobody can say who wrote this backup");
  });
});

describe("what was erased after a backup", () => {
  test("is taken out of it when it is read back, and every chain still verifies", async () => {
    const sha = sha256(picture("first"));
    const erase = stack.database.prepare("INSERT INTO erased (company, kind, ref, content, at) VALUES ('c1', ?, ?, ?, ?)");
    erase.run("object", originalKey("c1", sha), null, NOW + 1);
    erase.run("body", "j1/e2", '["who"]', NOW + 1);
    erase.run("person", "p1", "N. N.", NOW + 1);
    erase.run("site", "s1", '{"address":"N. N."}', NOW + 1);
    erase.run("old warranty", '["A/1","Pump"]', '{"customer":"N. N."}', NOW + 1);
    erase.run("release", "h1", "N. N.", NOW + 1);
    stack.database.exec("DELETE FROM photo");
    // the older backup knows nothing of it; the list beside both does
    const newer = await take(NOW + DAY_MS);
    expect(await readdir(out)).toContain("erased.json");
    const to = join(root, "without-erased");
    expect(await restore(to)).toMatchObject({ erased: 6, folder: taken.folder });
    const rows = allRows(join(to, "edge", D1_PLACE));
    expect([rows.photo, rows.erased?.length]).toEqual([[], 6]);
    for (const table of ["person", "site", "old_warranty", "released_record"])
      expect([table, rows[table]?.join().includes("N. N.")]).toEqual([table, true]);
    const database = new DatabaseSync(join(to, "edge", D1_PLACE), { readOnly: true });
    const entries = database.prepare("SELECT envelope, body, hash FROM entry ORDER BY number").all();
    database.close();
    const bodies = entries.map(({ body }) => JSON.parse(String(body)));
    expect(bodies[1]).toEqual({ what: { salt: expect.any(String), content: { text: "two" } }, who: { withheld: "erasure" } });
    const ledger = {
      format: 1,
      job: "j1",
      head: { number: 2, hash: entries[1]?.hash },
      entries: entries.map(({ envelope }, i) => ({ envelope: JSON.parse(String(envelope)), body: bodies[i] })),
      versions: [],
    };
    expect(verifyLedger(JSON.stringify(ledger))).toMatchObject({ faults: [], withheld: [{ number: 2, part: "who", reason: "erasure" }] });
    expect((await readFile(join(to, "edge", D1_PLACE))).includes("Nobody Nowhere")).toBe(false);
    expect((await inStore(to, (store) => store.head(originalKey("c1", sha)))).ok).toBe(false);
    expect(newer.list.objects).toEqual([]);
  });

  test("an altered list of what was erased is refused: it would take anything out", async () => {
    const folder = await mkdtemp(join(root, "forged-"));
    await cp(out, folder, { recursive: true });
    const text = await readFile(join(folder, "erased.json"), "utf8");
    await writeFile(join(folder, "erased.json"), text.replace('"j1/e2"', '"j1/e1"'));
    await expect(restore(join(root, "refused"), { from: folder })).rejects.toThrow("erased.json is not as it was written");
  });
});

test("backups past 35 days go when the next is taken, whole or half; what has another name stays", async () => {
  const folder = join(root, "expiring");
  const at = (days: number) => takeBackup({ directory: stack.directory, out: folder, clock: () => NOW + days * DAY_MS, log });
  const first = await at(0);
  await cp(first.folder, join(folder, "2026-11-20T00-00-00.000Z.part"), { recursive: true });
  await writeFile(join(folder, "note.txt"), "mine");
  expect((await at(35)).expired).toEqual(["2026-11-20T00-00-00.000Z.part"]);
  expect((await at(36)).expired).toEqual(["2026-11-28T18-30-00.000Z"]);
  const left = (await readdir(folder)).filter((name) => !name.startsWith("erased"));
  expect(left.sort()).toEqual(["2027-01-02T18-30-00.000Z", "2027-01-03T18-30-00.000Z", "note.txt"]);
});
