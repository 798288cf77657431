import type { Appended, EntryAnswer, PhotoStored, SessionView, WireProblem } from "../../../wire/index.ts";
import { type Answer, ask, tell } from "../../parts/edge.ts";
import { type Database, strictly, writeAbout } from "./database.ts";
import { isAnothers } from "./leave.ts";
import type { OwnEntry, OwnPhoto } from "./shapes.ts";

/** Entries in one batch; few enough that a weak signal carries it. */
const BATCH = 50;
/** A photo of 25 MB at 20 kB a second. */
const PHOTO_PATIENCE_MS = 20 * 60_000;

/**
 * How a pass of sending ended: everything gone, the edge out of reach or in trouble, the session ended, another page of this phone is
 * at it, or the crew of another company has signed in.
 */
export type Passed = "all sent" | "away" | "signed out" | "another is sending" | "another's";

export interface Progress {
  readonly photo?: string;
  /** Of the photo that is on its way, 0 to 1. */
  readonly share?: number;
}

type Tell = (progress: Progress) => void;

const isSignedOut = (problem: WireProblem): boolean => problem.status === 401;
/** Not this entry's fault: the edge is in trouble or asks for patience. */
const isForNow = (problem: WireProblem): boolean => problem.status >= 500 || problem.status === 429 || problem.status === 408;

async function settle(database: Database, own: readonly OwnEntry[], answers: readonly EntryAnswer[]): Promise<void> {
  const byId = new Map(answers.map((answer) => [answer.id, answer]));
  const transaction = database.transaction("entries", "readwrite", strictly);
  for (const one of own) {
    const answer = byId.get(one.id);
    if (answer === undefined) continue;
    const settled: OwnEntry =
      "refusal" in answer
        ? { ...one, standing: "refused", problem: answer.refusal }
        : { ...one, standing: "acknowledged", number: answer.number };
    // an answer that says 'for now' leaves it where it was
    if (settled.standing === "refused" && settled.problem !== undefined && isForNow(settled.problem)) continue;
    await transaction.store.put(settled);
  }
  await transaction.done;
}

/** The entries of one job, in their order; one that is refused does not hold the others. */
async function sendEntries(database: Database, job: string, own: readonly OwnEntry[]): Promise<Passed | undefined> {
  for (let i = 0; i < own.length; i += BATCH) {
    const some = own.slice(i, i + BATCH);
    const sent = Date.now();
    const answer = await tell<Appended>(`/api/jobs/${job}/entries`, { sent, entries: some.map(({ entry }) => entry) });
    if (answer.is === "away") return "away";
    if (answer.is === "refused") {
      if (isSignedOut(answer.problem)) return "signed out";
      if (isForNow(answer.problem)) return "away";
      // the batch as a whole was not taken: each of them is marked, and the next job goes on
      await settle(
        database,
        some,
        some.map(({ id }) => ({ id, refusal: answer.problem })),
      );
      continue;
    }
    await settle(database, some, answer.value.answers);
    await writeAbout(database, "skew", { milliseconds: answer.value.received - Math.round((sent + Date.now()) / 2), at: Date.now() });
  }
  return undefined;
}

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

async function sendPhoto(database: Database, photo: OwnPhoto, tellProgress: Tell): Promise<Passed | undefined> {
  const kept = await database.get("bytes", photo.sha256).catch(() => undefined);
  if (kept === undefined || kept.bytes.byteLength !== photo.bytes) {
    await database.put("photos", { ...photo, standing: "lost" });
    return undefined;
  }
  tellProgress({ photo: photo.sha256, share: 0 });
  const answer = await put(`/api/photos/${photo.sha256}`, kept.bytes, (share) => tellProgress({ photo: photo.sha256, share }));
  if (answer.is === "away") return "away";
  if (answer.is === "refused") {
    if (isSignedOut(answer.problem)) return "signed out";
    if (isForNow(answer.problem)) return "away";
    await database.put("photos", { ...photo, standing: "refused", problem: answer.problem });
    return undefined;
  }
  // acknowledged by hash and length, or not at all
  if (answer.value.sha256 !== photo.sha256 || answer.value.bytes !== photo.bytes) return "away";
  const transaction = database.transaction(["photos", "bytes"], "readwrite", strictly);
  const now = await transaction.objectStore("photos").get(photo.sha256);
  await Promise.all([
    transaction.objectStore("photos").put({ ...(now ?? photo), standing: "acknowledged" }),
    transaction.objectStore("bytes").delete(photo.sha256),
    transaction.done,
  ]);
  return undefined;
}

const inOrder = <T extends { readonly run: number }>(all: readonly T[]): readonly T[] => [...all].sort((a, b) => a.run - b.run);

async function pass(database: Database, tellProgress: Tell): Promise<Passed> {
  const session = await ask<SessionView>("/api/session");
  if (session.is === "away") return "away";
  if (session.is === "refused") return isSignedOut(session.problem) ? "signed out" : "away";
  if (await isAnothers(database, session.value)) return "another's";
  const own = inOrder((await database.getAll("entries")).filter(({ standing }) => standing === "not sent"));
  for (const job of new Set(own.map(({ job: of }) => of))) {
    const ended = await sendEntries(
      database,
      job,
      own.filter((one) => one.job === job),
    );
    if (ended !== undefined) return ended;
  }
  tellProgress({});
  for (const photo of inOrder((await database.getAll("photos")).filter(({ standing }) => standing === "not sent"))) {
    const ended = await sendPhoto(database, photo, tellProgress);
    tellProgress({});
    if (ended !== undefined) return ended;
  }
  return "all sent";
}

/** Sends what is not sent: entries first, then photos, each in its order. One page of a phone at a time does it. */
export function sendAll(database: Database, tellProgress: Tell): Promise<Passed> {
  return navigator.locks.request("asburied-send", { ifAvailable: true }, (lock) =>
    lock === null ? ("another is sending" as const) : pass(database, tellProgress),
  );
}
