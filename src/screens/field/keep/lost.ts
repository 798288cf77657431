import { type Database, strictly } from "./database.ts";
import type { OwnPhoto } from "./shapes.ts";

/** The bytes of a photo, whole; undefined where this phone cannot read them. */
export async function readBytes(database: Database, { sha256, bytes }: OwnPhoto): Promise<ArrayBuffer | undefined> {
  const kept = await database.get("bytes", sha256).catch(() => undefined);
  return kept?.bytes.byteLength === bytes ? kept.bytes : undefined;
}

/** A phone in trouble may read tomorrow what it could not read today: photos that can be read again wait to be sent again; whether there were any. */
export async function findAgain(database: Database): Promise<boolean> {
  let found = false;
  for (const photo of await database.getAll("photos")) {
    if (photo.standing !== "lost" || (await readBytes(database, photo)) === undefined) continue;
    const transaction = database.transaction("photos", "readwrite", strictly);
    const now = await transaction.store.get(photo.sha256);
    if (now?.standing === "lost") await transaction.store.put({ ...now, standing: "not sent" });
    await transaction.done;
    found = true;
  }
  return found;
}
