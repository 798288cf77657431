import { mkdtemp, readFile, rm, stat, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterEach, beforeEach, expect, test } from "vitest";
import { secretsIn } from "#infra/local/secrets.ts";

let directory = "";
beforeEach(async () => {
  directory = await mkdtemp(join(tmpdir(), "asburied-secrets-"));
});
afterEach(() => rm(directory, { recursive: true, force: true }));

test("made once, kept for the owner alone, the same on the second start", async () => {
  const first = await secretsIn(directory);
  expect(new Set(Object.values(first)).size).toBe(5);
  expect((await stat(join(directory, "secrets.json"))).mode & 0o777).toBe(0o600);
  expect(await secretsIn(directory)).toEqual(first);
});

test("two folders do not share them", async () => {
  const other = await mkdtemp(join(tmpdir(), "asburied-secrets-"));
  expect((await secretsIn(directory)).operatorKey).not.toBe((await secretsIn(other)).operatorKey);
  await rm(other, { recursive: true, force: true });
});

test("a file from before records were sealed gets the secret for it, once, and keeps the others", async () => {
  const { sealSecret, ...before } = await secretsIn(directory);
  await writeFile(join(directory, "secrets.json"), JSON.stringify(before));
  const after = await secretsIn(directory);
  expect(after).toEqual({ ...before, sealSecret: expect.stringMatching(/^[A-Za-z0-9_-]{43}$/) });
  expect(after.sealSecret).not.toBe(sealSecret);
  expect(JSON.parse(await readFile(join(directory, "secrets.json"), "utf8"))).toEqual(after);
  expect(await secretsIn(directory)).toEqual(after);
});

test("a file that has lost one is refused instead of replaced", async () => {
  await writeFile(join(directory, "secrets.json"), '{"storeAccessKey":"A"}');
  await expect(secretsIn(directory)).rejects.toThrow("Put the file back");
});
