import type { Database } from "./database.ts";
import type { AboutPhone, JobHead, KeptJob, OwnEntry, OwnPhoto } from "./shapes.ts";

/** What this phone's store holds at one moment. */
export interface Stored {
  readonly heads: readonly JobHead[];
  readonly jobs: ReadonlyMap<string, KeptJob>;
  readonly entries: readonly OwnEntry[];
  readonly photos: readonly OwnPhoto[];
  readonly session: AboutPhone["session"] | undefined;
  readonly today: AboutPhone["today"] | undefined;
  readonly skew: AboutPhone["skew"] | undefined;
  readonly read: AboutPhone["read"] | undefined;
  readonly phone: AboutPhone["phone"] | undefined;
}

/**
 * All in one go: an entry that goes over into its job's ledger is in one of them at every moment. `known`: the jobs as last read, of
 * which a ledger is read again only when its head is another; without it no job is read.
 */
export async function storedIn(database: Database, known: ReadonlyMap<string, KeptJob> | undefined): Promise<Stored> {
  const transaction = database.transaction(["jobs", "heads", "entries", "photos", "about"]);
  const of = <K extends keyof AboutPhone>(key: K) => transaction.objectStore("about").get(key) as Promise<AboutPhone[K] | undefined>;
  const readingHeads = transaction.objectStore("heads").getAll();
  const all = Promise.all([
    transaction.objectStore("entries").getAll(),
    transaction.objectStore("photos").getAll(),
    of("session"),
    of("today"),
    of("skew"),
    of("read"),
    of("phone"),
  ]);
  const heads = await readingHeads;
  const jobs = new Map<string, KeptJob>();
  if (known !== undefined)
    for (const { job, hash, readAt } of heads) {
      const before = known.get(job);
      const isSame = before?.readAt === readAt && before.ledger.head.hash === hash;
      const kept = isSame ? before : await transaction.objectStore("jobs").get(job);
      if (kept !== undefined) jobs.set(job, kept);
    }
  const [entries, photos, session, today, skew, read, phone] = await all;
  return { heads, jobs, entries, photos, session, today, skew, read, phone };
}
