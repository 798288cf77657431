import { join } from "node:path";
import { bytesOf, filesBelow, jsonIn, measured } from "./files.ts";
import { type BackupList, type BackupPart, databasesOf, LIST, listIn, SEAL } from "./list.ts";
import { sealFault } from "./seal.ts";

/** What is wrong with one file of a backup. */
export interface BackupFault {
  readonly file: string;
  readonly how: string;
}

export interface Checked {
  /** Absent where the list itself is at fault. */
  readonly list?: BackupList;
  readonly faults: readonly BackupFault[];
}

async function listChecked(folder: string, secret: string | undefined): Promise<BackupList | BackupFault> {
  const [bytes, seal] = await Promise.all([bytesOf(join(folder, LIST)), bytesOf(join(folder, SEAL))]);
  if (bytes === undefined) return { file: LIST, how: "is missing: this is no backup, or one that was never finished" };
  if (seal === undefined) return { file: SEAL, how: "is missing" };
  const how = sealFault(bytes, jsonIn(seal), secret);
  if (how !== undefined) return { file: LIST, how };
  return listIn(jsonIn(bytes)) ?? { file: LIST, how: "cannot be read as the list of a backup" };
}

async function partFault(folder: string, { name, bytes, sha256 }: BackupPart): Promise<readonly BackupFault[]> {
  const found = await measured(join(folder, name));
  if (found === undefined) return [{ file: name, how: "is missing" }];
  if (found.bytes !== bytes) return [{ file: name, how: `has ${found.bytes} bytes where the list says ${bytes}` }];
  return found.sha256 === sha256 ? [] : [{ file: name, how: "has other bytes than the list says" }];
}

/** Checks every byte of a backup. `secret`: of the stack that it was taken of; without it nobody can say who wrote the list. */
export async function checkBackup(folder: string, secret: string | undefined): Promise<Checked> {
  const list = await listChecked(folder, secret);
  if ("how" in list) return { faults: [list] };
  const parts = [...databasesOf(list).map(({ database }) => database), ...list.objects];
  const faults: BackupFault[] = [];
  for (const part of parts) faults.push(...(await partFault(folder, part)));
  const known = new Set([LIST, SEAL, ...parts.map(({ name }) => name)]);
  const strange = (await filesBelow(folder)).filter((name) => !known.has(name));
  return { list, faults: [...faults, ...strange.map((file) => ({ file, how: "is not in the list" }))] };
}
