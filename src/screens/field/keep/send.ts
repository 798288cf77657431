import type { Appended, EntryAnswer, SessionView, WireProblem } from "../../../wire/index.ts";
import { ask, tell } from "../../parts/edge.ts";
import { type Database, strictly, writeAbout } from "./database.ts";
import { isAnothers } from "./leave.ts";
import { isForNow, isSignedOut, type Passed, type Tell } from "./passed.ts";
import { sendPhoto } from "./send-photo.ts";
import type { OwnEntry, OwnPhoto } from "./shapes.ts";

/** Entries in one batch; few enough that a weak signal carries it. */
const BATCH = 50;
async function settle(database: Database, own: readonly OwnEntry[], answers: readonly EntryAnswer[]): Promise<void> {
  const byId = new Map(answers.map((answer) => [answer.id, answer]));
  const transaction = database.transaction("entries", "readwrite", strictly);
  for (const one of own) {
    const answer = byId.get(one.id);
    if (answer === undefined) continue;
    // an answer that says 'for now' leaves it where it was
    if ("refusal" in answer && isForNow(answer.refusal)) continue;
    // another page may have found it in the ledger already
    const now = await transaction.store.get(one.run);
    if (now?.standing !== "not sent") continue;
    await transaction.store.put(
      "refusal" in answer
        ? { ...now, standing: "refused", problem: answer.refusal }
        : { ...now, standing: "acknowledged", number: answer.number },
    );
  }
  await transaction.done;
}

/** A batch that is too large, or that one of its entries made unreadable: the half without it is taken. */
const isOfTheBatch = (problem: WireProblem): boolean => problem.status === 400 || problem.status === 413;

async function sendBatch(database: Database, job: string, some: readonly OwnEntry[]): Promise<Passed | undefined> {
  const sent = Date.now();
  const answer = await tell<Appended>(`/api/jobs/${job}/entries`, { sent, entries: some.map(({ entry }) => entry) });
  if (answer.is === "away") return "away";
  if (answer.is === "given") {
    const skew = answer.value.received - Math.round((sent + Date.now()) / 2);
    await settle(database, some, answer.value.answers);
    await writeAbout(database, "skew", { milliseconds: skew, at: Date.now() });
    return undefined;
  }
  const { problem } = answer;
  if (isSignedOut(problem)) return "signed out";
  if (isForNow(problem)) return "away";
  if (isOfTheBatch(problem) && some.length > 1) {
    const half = Math.ceil(some.length / 2);
    return (await sendBatch(database, job, some.slice(0, half))) ?? (await sendBatch(database, job, some.slice(half)));
  }
  const refused = some.map(({ id }) => ({ id, refusal: problem }));
  await settle(database, some, refused);
  return undefined;
}

/** The entries of one job, in their order; one that is refused does not hold the others. */
async function sendEntries(database: Database, job: string, own: readonly OwnEntry[]): Promise<Passed | undefined> {
  for (let i = 0; i < own.length; i += BATCH) {
    const ended = await sendBatch(database, job, own.slice(i, i + BATCH));
    if (ended !== undefined) return ended;
  }
  return undefined;
}

const isWaiting = ({ standing }: OwnEntry | OwnPhoto): boolean => standing === "not sent";
const inOrder = <T extends { readonly run: number }>(all: readonly T[]): readonly T[] => [...all].sort((a, b) => a.run - b.run);

/** Whatever waits now and was not answered 'for now' in this pass already, job by job. */
async function sendWaitingEntries(database: Database, tried: Set<string>): Promise<Passed | undefined> {
  const own = inOrder((await database.getAll("entries")).filter((one) => isWaiting(one) && !tried.has(one.id)));
  for (const { id } of own) tried.add(id);
  for (const job of new Set(own.map(({ job: of }) => of))) {
    const mine = own.filter((one) => one.job === job);
    const ended = await sendEntries(database, job, mine);
    if (ended !== undefined) return ended;
  }
  return undefined;
}

async function pass(database: Database, tellProgress: Tell): Promise<Passed> {
  const session = await ask<SessionView>("/api/session");
  if (session.is === "away") return "away";
  if (session.is === "refused") return isSignedOut(session.problem) ? "signed out" : "away";
  if (await isAnothers(database, session.value)) return "another's";
  const tried = new Set<string>();
  for (;;) {
    // before each photo: what was entered while the last one went does not wait behind two hundred others
    const ended = await sendWaitingEntries(database, tried);
    if (ended !== undefined) return ended;
    tellProgress({});
    const [photo] = inOrder((await database.getAll("photos")).filter((one) => isWaiting(one) && !tried.has(one.sha256)));
    if (photo === undefined) break;
    tried.add(photo.sha256);
    const came = await sendPhoto(database, photo, tellProgress);
    if (came !== undefined) return came;
  }
  // an entry that was answered 'for now' is still here
  return (await database.getAll("entries")).some(isWaiting) ? "away" : "all sent";
}

/** Sends what is not sent: entries first, then photos, each in its order. One page of a phone at a time does it. */
export function sendAll(database: Database, tellProgress: Tell): Promise<Passed> {
  return navigator.locks.request("asburied-send", { ifAvailable: true }, (lock) =>
    lock === null ? ("another is sending" as const) : pass(database, tellProgress),
  );
}
