import type { PhotoStored } from "../../../wire/index.ts";
import type { Answer } from "../../parts/edge.ts";
import { type Database, strictly } from "./database.ts";
import { readBytes } from "./lost.ts";
import { isForNow, isSignedOut, type Passed, type Tell } from "./passed.ts";
import type { OwnPhoto } from "./shapes.ts";

/** A photo of 25 MB at 20 kB a second. */
const PHOTO_PATIENCE_MS = 20 * 60_000;

/** Puts bytes with their progress, which `fetch` does not tell. */
function put(path: string, bytes: ArrayBuffer, progress: (share: number) => void): Promise<Answer<PhotoStored>> {
  return new Promise((resolve) => {
    const request = new XMLHttpRequest();
    request.open("PUT", path);
    request.setRequestHeader("x-asburied", "1");
    request.setRequestHeader("content-type", "application/octet-stream");
    request.responseType = "text";
    request.timeout = PHOTO_PATIENCE_MS;
    request.upload.onprogress = ({ loaded, total }) => progress(total > 0 ? loaded / total : 0);
    const away = (): void => resolve({ is: "away" });
    request.onerror = away;
    request.ontimeout = away;
    request.onabort = away;
    request.onload = () => {
      try {
        const value = JSON.parse(request.responseText);
        resolve(
          request.status < 300
            ? { is: "given", value }
            : typeof value?.code === "string"
              ? { is: "refused", problem: value }
              : { is: "away" },
        );
      } catch {
        away();
      }
    };
    request.send(bytes);
  });
}

/** What a photo has come to. It is read again: while it went it may have been put to a picture, or taken off this phone. */
async function settlePhoto(database: Database, name: string, changes: Pick<OwnPhoto, "standing" | "problem">): Promise<void> {
  const transaction = database.transaction(["photos", "bytes"], "readwrite", strictly);
  const now = await transaction.objectStore("photos").get(name);
  if (now !== undefined) await transaction.objectStore("photos").put({ ...now, ...changes });
  if (changes.standing === "acknowledged") await transaction.objectStore("bytes").delete(name);
  await transaction.done;
}

/** One photo: acknowledged by hash and length, or kept. Undefined: the next one may go. */
export async function sendPhoto(database: Database, photo: OwnPhoto, tellProgress: Tell): Promise<Passed | undefined> {
  const { sha256: name } = photo;
  const bytes = await readBytes(database, photo);
  if (bytes === undefined) {
    await settlePhoto(database, name, { standing: "lost" });
    return undefined;
  }
  tellProgress({ photo: name, share: 0 });
  const answer = await put(`/api/photos/${name}`, bytes, (share) => tellProgress({ photo: name, share }));
  if (answer.is === "away") return "away";
  if (answer.is === "refused") {
    if (isSignedOut(answer.problem)) return "signed out";
    if (isForNow(answer.problem)) return "away";
    await settlePhoto(database, name, { standing: "refused", problem: answer.problem });
    return undefined;
  }
  // acknowledged by hash and length, or not at all
  if (answer.value.sha256 !== name || answer.value.bytes !== photo.bytes) return "away";
  await settlePhoto(database, name, { standing: "acknowledged" });
  return undefined;
}
