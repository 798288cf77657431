import { entryDigest, type Ledger, sealedOf } from "../../../ledger/index.ts";
import type { JobList, JobView, People, SessionView, WireProblem } from "../../../wire/index.ts";
import { digest } from "../../parts/digest.ts";
import { ask } from "../../parts/edge.ts";
import { type Database, strictly, writeAbout } from "./database.ts";
import { headOf } from "./heads.ts";
import { emptyForAnother, isAnothers } from "./leave.ts";
import type { KeptJob } from "./shapes.ts";

/** How reading from the edge ended. */
export type Reading =
  | { readonly is: "read" }
  | { readonly is: "away" }
  | { readonly is: "refused"; readonly problem: WireProblem }
  /** Another company's crew has signed in, and what is not sent is not theirs. */
  | { readonly is: "another's" };

async function digestsOf(ledger: Ledger, known: Readonly<Record<string, string>>): Promise<Readonly<Record<string, string>>> {
  const pairs = await Promise.all(
    ledger.entries.map(async ({ envelope }) => {
      const before = known[envelope.id];
      if (before !== undefined) return [envelope.id, before] as const;
      const own = await entryDigest(digest, sealedOf(envelope));
      return [envelope.id, own.ok ? own.value : ""] as const;
    }),
  );
  return Object.fromEntries(pairs);
}

/** A job and whatever of this phone's own entries its ledger now holds, in one go: nothing counts twice, nothing is missing between. */
async function keep(database: Database, kept: KeptJob): Promise<void> {
  const there = new Set(kept.ledger.entries.map(({ envelope }) => envelope.id));
  const transaction = database.transaction(["jobs", "heads", "entries"], "readwrite", strictly);
  await transaction.objectStore("jobs").put(kept);
  await transaction.objectStore("heads").put(headOf(kept));
  for (const own of await transaction.objectStore("entries").index("job").getAll(kept.job))
    if (there.has(own.id)) await transaction.objectStore("entries").delete(own.run);
  await transaction.done;
}

async function readJob(database: Database, job: string, now: number): Promise<Reading> {
  const [view, ledger] = await Promise.all([ask<JobView>(`/api/jobs/${job}`), ask<Ledger>(`/api/jobs/${job}/ledger`)]);
  if (view.is !== "given") return view;
  if (ledger.is !== "given") return ledger;
  const before = await database.get("jobs", job);
  // a slower answer of another tab must not put an older ledger over a newer one
  if (before !== undefined && before.ledger.head.number > ledger.value.head.number) return { is: "read" };
  const { title, ownNumber, photos } = view.value;
  await keep(database, {
    job,
    title,
    ...(ownNumber === undefined ? {} : { ownNumber }),
    ledger: ledger.value,
    digests: await digestsOf(ledger.value, before?.digests ?? {}),
    photos,
    readAt: now,
  });
  return { is: "read" };
}

/** Reads who is signed in, the crew's people, and every job that has grown since. */
export async function readAll(database: Database): Promise<Reading> {
  const session = await ask<SessionView>("/api/session");
  if (session.is !== "given") return session;
  if (await isAnothers(database, session.value)) return { is: "another's" };
  await emptyForAnother(database, session.value);
  const [people, list] = await Promise.all([ask<People>("/api/people"), ask<JobList>("/api/jobs")]);
  if (people.is !== "given") return people;
  if (list.is !== "given") return list;
  const crew = people.value.people.filter(({ role, left }) => role === "crew" && left === undefined);
  await writeAbout(database, "session", { session: session.value, people: crew.map(({ person, name }) => ({ person, name })) });
  const now = Date.now();
  for (const { job, entries } of list.value.jobs) {
    const before = await database.get("jobs", job);
    const settled =
      before !== undefined &&
      before.ledger.head.number === entries &&
      !Object.values(before.photos).some(({ state }) => state === "stored");
    if (settled) continue;
    const read = await readJob(database, job, now);
    if (read.is !== "read") return read;
  }
  await writeAbout(database, "read", { at: now });
  return { is: "read" };
}
