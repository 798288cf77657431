import { type Database, strictly } from "./database.ts";

/** Kept free to be given up when the phone is full, so that entries (which are small) still find room. */
const RESERVE = 2 * 1024 * 1024;

/** What this phone keeps that is not sent. The browser's own figure of what is left is an invention, so none is shown. */
export interface Kept {
  readonly entries: number;
  readonly photos: number;
  readonly bytes: number;
}

/** Asks the browser not to clear this store away; true when it promised. */
export async function askToPersist(): Promise<boolean> {
  if (navigator.storage?.persist === undefined) return false;
  return (await navigator.storage.persisted()) || (await navigator.storage.persist());
}

const TILE = 1024 * 1024;
const AT_ONCE = 65_536;

/** Bytes that no browser can keep in less: Chromium stores two megabytes of zeros in a hundred kilobytes. */
function incompressible(length: number): ArrayBuffer {
  const tile = new Uint8Array(Math.min(TILE, length));
  for (let i = 0; i < tile.length; i += AT_ONCE) crypto.getRandomValues(tile.subarray(i, i + AT_ONCE));
  const bytes = new Uint8Array(length);
  for (let i = 0; i < length; i += tile.length) bytes.set(tile.subarray(0, length - i), i);
  return bytes.buffer;
}

/** Holds the reserve; false where there is no room for it. */
export async function holdReserve(database: Database): Promise<boolean> {
  // left by a trial of `freeSpace` that was cut off
  await database.delete("reserve", "tried");
  if ((await database.count("reserve")) > 0) return true;
  try {
    await database.put("reserve", { name: "reserve", bytes: incompressible(RESERVE) });
    return true;
  } catch (error) {
    if (!isFull(error)) throw error;
    return false;
  }
}

/** Gives the reserve up; false when it was gone already. */
export async function giveUpReserve(database: Database): Promise<boolean> {
  const transaction = database.transaction("reserve", "readwrite", strictly);
  const held = await transaction.store.count();
  await transaction.store.clear();
  await transaction.done;
  return held > 0;
}

/** What is tried for: eight pictures. */
const TRIED = 24 * 1024 * 1024;

/** Bytes that this store surely has room for, up to 24 MB: written and taken away again. */
export async function freeSpace(database: Database): Promise<number> {
  for (let bytes = TRIED; bytes >= 1024 * 1024; bytes /= 2) {
    const transaction = database.transaction("reserve", "readwrite");
    try {
      await transaction.store.put({ name: "tried", bytes: incompressible(bytes) });
      await transaction.done;
      await database.delete("reserve", "tried");
      return bytes;
    } catch (error) {
      await transaction.done.catch(() => {});
      if (!isFull(error)) throw error;
    }
  }
  return 0;
}

export const isFull = (error: unknown): boolean => error instanceof DOMException && error.name === "QuotaExceededError";

/**
 * Writes what is small; tries again without the reserve when the phone has no room. A photo must not have it: it would take what every
 * later entry lives on. @throws QuotaExceededError when that does not help.
 */
export async function withRoom<T>(database: Database, write: () => Promise<T>): Promise<T> {
  try {
    return await write();
  } catch (error) {
    if (isFull(error) && (await giveUpReserve(database))) return write();
    throw error;
  }
}
