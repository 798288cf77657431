import { createHash, randomUUID } from "node:crypto";
import { createWriteStream } from "node:fs";
import { open, readdir, rename, rm, unlink } from "node:fs/promises";
import { dirname, join } from "node:path";
import { Readable } from "node:stream";
import { pipeline } from "node:stream/promises";
import type { FilesystemStore } from "@20minutes/s3rver";

const PART = /\.part-[0-9a-f-]{36}$/;

/**
 * Makes the package's file store write whole files or none: into a part beside the place, flushed, then renamed. As it
 * comes it writes straight to the final name, so that an upload cut off half way, or a killed process, leaves half an
 * object there, in place of a whole one that was acknowledged before.
 */
export function writeWhole(store: FilesystemStore): void {
  store.putContent = async (path, content) => {
    const part = `${path}.part-${randomUUID()}`;
    const md5 = createHash("md5");
    let length = 0;
    try {
      await pipeline(
        Readable.from(content instanceof Uint8Array ? [content] : content),
        async function* (source: AsyncIterable<Uint8Array>) {
          for await (const chunk of source) {
            md5.update(chunk);
            length += chunk.length;
            yield chunk;
          }
        },
        createWriteStream(part, { flush: true }),
      );
      await rename(part, path);
      await flushFolder(dirname(path));
    } catch (thrown) {
      await rm(part, { force: true });
      throw thrown;
    }
    return [length, md5.digest("hex")];
  };

  const putMetadata = store.putMetadata.bind(store);
  store.putMetadata = async (bucket, key, metadata, md5) => {
    // The package writes the notes of an object in place; into a part of another name first, then renamed over.
    const partKey = `${key}.part-${randomUUID()}`;
    await putMetadata(bucket, partKey, metadata, md5);
    if (md5) await rename(store.getResourcePath(bucket, partKey, "object.md5"), store.getResourcePath(bucket, key, "object.md5"));
    await rename(store.getResourcePath(bucket, partKey, "metadata.json"), store.getResourcePath(bucket, key, "metadata.json"));
  };

  store.deleteObject = async (bucket, key) => {
    // Folders stay: the package's tidying can take one away from under an upload that has just made it.
    for (const resource of ["object", "object.md5", "metadata.json"]) {
      await unlink(store.getResourcePath(bucket, key, resource)).catch((thrown: NodeJS.ErrnoException) => {
        if (thrown.code !== "ENOENT") throw thrown;
      });
    }
  };
}

/** A rename lasts over a power cut only when its folder is flushed; where folders cannot be opened (Windows) it is left. */
async function flushFolder(path: string): Promise<void> {
  const folder = await open(path, "r").catch(() => undefined);
  try {
    await folder?.sync().catch(() => undefined);
  } finally {
    await folder?.close();
  }
}

/** Takes away the parts that a killed process left behind. */
export async function removeParts(directory: string): Promise<void> {
  const entries = await readdir(directory, { recursive: true, withFileTypes: true }).catch(() => []);
  for (const entry of entries) {
    if (entry.isFile() && isPart(entry.name)) await rm(join(entry.parentPath, entry.name), { force: true });
  }
}

const isPart = (name: string): boolean => PART.test(name.replace(/\._S3rver_(object\.md5|metadata\.json)$/, ""));
