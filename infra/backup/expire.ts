import { readdir, rm } from "node:fs/promises";
import { join } from "node:path";
import { DAY_MS, KEPT_DAYS } from "./list.ts";

/** 2026-11-28T18-30-00.000Z: in the order of time, and a name on every file system. */
export const stampOf = (now: number): string => new Date(now).toISOString().replaceAll(":", "-");

const NAME = /^(\d{4}-\d\d-\d\dT\d\d)-(\d\d)-(\d\d\.\d{3}Z)(\.part)?$/;

/** When a backup of this name began; undefined where it is the name of something else. Half a backup is no backup. */
export function beganAt(name: string): { readonly at: number; readonly isWhole: boolean } | undefined {
  const [, hours, minutes, seconds, part] = NAME.exec(name) ?? [];
  const at = Date.parse(`${hours}:${minutes}:${seconds}`);
  return Number.isNaN(at) ? undefined : { at, isWhole: part === undefined };
}

/** The whole backups in a folder of backups, the newest first. */
export async function backupsIn(out: string): Promise<readonly string[]> {
  const names = await readdir(out).catch(() => []);
  return names
    .filter((name) => beganAt(name)?.isWhole)
    .sort()
    .reverse();
}

/** Removes every backup of the folder, whole or half, that is older than backups are kept. What has another name stays. */
export async function removeExpired(out: string, now: number, log: (line: string) => void): Promise<readonly string[]> {
  const past = (await readdir(out)).filter((name) => {
    const began = beganAt(name);
    return began !== undefined && now - began.at > KEPT_DAYS * DAY_MS;
  });
  for (const name of past) {
    await rm(join(out, name), { recursive: true, force: true });
    log(`${name} was older than ${KEPT_DAYS} days and has been removed.`);
  }
  return past;
}
