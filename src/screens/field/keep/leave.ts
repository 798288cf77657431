import type { SessionView } from "../../../wire/index.ts";
import { type Database, readAbout, strictly } from "./database.ts";

async function jobsWaiting(database: Database): Promise<ReadonlySet<string>> {
  const [entries, photos] = await Promise.all([database.getAll("entries"), database.getAll("photos")]);
  return new Set([...entries, ...photos].filter(({ standing }) => standing === "not sent" || standing === "refused").map(({ job }) => job));
}

/**
 * Forgets whose phone this was: session, people, the person of the day, and every job that nothing waits for. What is not sent stays,
 * with its job's name, and goes when somebody of the same company signs in here again.
 */
export async function forget(database: Database): Promise<void> {
  const waiting = await jobsWaiting(database);
  const company = await readAbout(database, "session");
  const transaction = database.transaction(["about", "jobs", "heads", "small", "drafts"], "readwrite", strictly);
  for (const key of await transaction.objectStore("jobs").getAllKeys()) {
    if (waiting.has(key)) continue;
    await transaction.objectStore("jobs").delete(key);
    await transaction.objectStore("heads").delete(key);
  }
  const about = transaction.objectStore("about");
  await Promise.all([
    transaction.objectStore("small").clear(),
    transaction.objectStore("drafts").clear(),
    about.delete("session"),
    about.delete("today"),
    about.delete("read"),
    ...(waiting.size > 0 && company !== undefined ? [about.put({ company: company.session.company }, "left")] : [about.delete("left")]),
    transaction.done,
  ]);
}

/** Whether what waits on this phone is another company's than that of who has now signed in: it must not be sent there. */
export async function isAnothers(database: Database, session: SessionView): Promise<boolean> {
  const [before, left] = await Promise.all([readAbout(database, "session"), readAbout(database, "left")]);
  const company = before?.session.company ?? left?.company;
  return company !== undefined && company !== session.company && (await jobsWaiting(database)).size > 0;
}

const stores = ["jobs", "heads", "entries", "photos", "bytes", "small", "drafts"] as const;

/** Everything but the phone's own id and number. */
export async function emptyAll(database: Database): Promise<void> {
  const transaction = database.transaction(stores, "readwrite");
  await Promise.all([...stores.map((store) => transaction.objectStore(store).clear()), transaction.done]);
  for (const key of ["session", "today", "read", "left"] as const) await database.delete("about", key);
}

/** Empties what another company's crew left, once nothing of it waits. */
export async function emptyForAnother(database: Database, session: SessionView): Promise<void> {
  const before = await readAbout(database, "session");
  if (before !== undefined && before.session.company !== session.company) await emptyAll(database);
}
