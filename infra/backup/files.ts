import { createHash } from "node:crypto";
import { createReadStream, createWriteStream } from "node:fs";
import { mkdir, open, readdir, readFile, writeFile } from "node:fs/promises";
import { dirname, join, relative, sep } from "node:path";
import { Readable } from "node:stream";
import { pipeline } from "node:stream/promises";

export interface Measured {
  readonly bytes: number;
  readonly sha256: string;
}

/** Number of bytes and digest of a file; undefined where there is none. One block at a time is held. */
export async function measured(path: string): Promise<Measured | undefined> {
  const hash = createHash("sha256");
  let bytes = 0;
  try {
    for await (const block of createReadStream(path)) {
      hash.update(block as Buffer);
      bytes += (block as Buffer).length;
    }
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code === "ENOENT") return undefined;
    throw error;
  }
  return { bytes, sha256: hash.digest("hex") };
}

/** Streams into a new file, flushed, and says what came. */
export async function written(path: string, stream: ReadableStream<Uint8Array>): Promise<Measured> {
  await mkdir(dirname(path), { recursive: true });
  const hash = createHash("sha256");
  let bytes = 0;
  await pipeline(
    Readable.fromWeb(stream as never),
    async function* (source: AsyncIterable<Uint8Array>) {
      for await (const block of source) {
        hash.update(block);
        bytes += block.length;
        yield block;
      }
    },
    createWriteStream(path, { flags: "wx", mode: 0o600, flush: true }),
  );
  return { bytes, sha256: hash.digest("hex") };
}

export const writeFlushed = (path: string, text: string): Promise<void> => writeFile(path, text, { mode: 0o600, flush: true });

export async function flush(path: string): Promise<void> {
  const file = await open(path, "r");
  try {
    await file.sync();
  } finally {
    await file.close();
  }
}

/** Every file below a folder, by its path from there with slashes. */
export async function filesBelow(folder: string): Promise<readonly string[]> {
  const entries = await readdir(folder, { recursive: true, withFileTypes: true });
  return entries
    .filter((entry) => !entry.isDirectory())
    .map((entry) => relative(folder, join(entry.parentPath, entry.name)).split(sep).join("/"))
    .sort();
}

/** Bytes of a small file; undefined where there is none. */
export const bytesOf = (path: string): Promise<Uint8Array | undefined> =>
  readFile(path).catch((error: NodeJS.ErrnoException) => {
    if (error.code === "ENOENT") return undefined;
    throw error;
  });

export function jsonIn(bytes: Uint8Array): unknown {
  try {
    return JSON.parse(new TextDecoder().decode(bytes));
  } catch {
    return undefined;
  }
}
