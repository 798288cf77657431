import { type IDBPDatabase, openDB } from "idb";
import { headOf } from "./heads.ts";
import type { AboutPhone, KeepSchema } from "./shapes.ts";

export type Database = IDBPDatabase<KeepSchema>;

/** Written through to the disk before it counts: a phone may be switched off a second later. */
export const strictly = { durability: "strict" } as const;

const NAME = "asburied";

/**
 * The phone's own store. A newer app in another tab closes this one's hold on it, so that neither waits for the other; a browser may
 * end it by itself. Either way this page starts anew: without its store it would keep nothing of what is entered.
 */
export async function openDatabase(name = NAME): Promise<Database> {
  const database = await openDB<KeepSchema>(name, 2, {
    async upgrade(made, before, _, transaction) {
      if (before < 2) made.createObjectStore("heads", { keyPath: "job" });
      if (before === 1)
        for (const kept of await transaction.objectStore("jobs").getAll()) await transaction.objectStore("heads").put(headOf(kept));
      if (before > 0) return;
      made.createObjectStore("about");
      made.createObjectStore("jobs", { keyPath: "job" });
      made.createObjectStore("entries", { keyPath: "run" }).createIndex("job", "job");
      made.createObjectStore("photos", { keyPath: "sha256" }).createIndex("job", "job");
      made.createObjectStore("bytes", { keyPath: "sha256" });
      made.createObjectStore("small", { keyPath: "sha256" });
      made.createObjectStore("drafts", { keyPath: "place" });
      made.createObjectStore("reserve", { keyPath: "name" });
    },
    blocking(_current, _blocked, event) {
      (event.target as IDBDatabase).close();
      location.reload();
    },
    terminated() {
      location.reload();
    },
  });
  return database;
}

export const readAbout = <K extends keyof AboutPhone>(database: Database, key: K): Promise<AboutPhone[K] | undefined> =>
  database.get("about", key) as Promise<AboutPhone[K] | undefined>;

export async function writeAbout<K extends keyof AboutPhone>(database: Database, key: K, value: AboutPhone[K]): Promise<void> {
  await database.put("about", value, key);
}

/** Waits for a whole transaction. Why it failed is told by the transaction alone: its requests may only say that it was aborted. */
export async function settled(transaction: { readonly done: Promise<void> }, ...writes: readonly Promise<unknown>[]): Promise<void> {
  for (const write of writes) write.catch(() => {});
  await transaction.done;
}
