import { type IDBPDatabase, openDB } from "idb";
import type { AboutPhone, KeepSchema } from "./shapes.ts";

export type Database = IDBPDatabase<KeepSchema>;

/** Written through to the disk before it counts: a phone may be switched off a second later. */
export const strictly = { durability: "strict" } as const;

const NAME = "asburied";

/** The phone's own store. A newer app in another tab closes this one's hold on it, so that neither waits for the other. */
export async function openDatabase(name = NAME): Promise<Database> {
  const database = await openDB<KeepSchema>(name, 1, {
    upgrade(made) {
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
    },
  });
  return database;
}

export const readAbout = <K extends keyof AboutPhone>(database: Database, key: K): Promise<AboutPhone[K] | undefined> =>
  database.get("about", key) as Promise<AboutPhone[K] | undefined>;

export async function writeAbout<K extends keyof AboutPhone>(database: Database, key: K, value: AboutPhone[K]): Promise<void> {
  await database.put("about", value, key);
}
