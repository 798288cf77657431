import type { Database } from "../../../src/screens/field/keep/database.ts";

type Store = Map<unknown, unknown>;

const keys: Readonly<Record<string, string>> = { entries: "run", photos: "sha256", bytes: "sha256" };

/** As much of the phone's own store as sending asks for, in memory: a phone without a browser. */
export function memoryDatabase(): Database {
  const stores = new Map<string, Store>();
  const of = (name: string): Store => {
    const there = stores.get(name) ?? new Map();
    stores.set(name, there);
    return there;
  };
  const objectStore = (name: string) => ({
    get: async (key: unknown) => of(name).get(key),
    getAll: async () => [...of(name).values()],
    put: async (value: Record<string, unknown>, key?: unknown) => void of(name).set(key ?? value[keys[name] ?? ""], value),
    delete: async (key: unknown) => void of(name).delete(key),
  });
  return {
    get: async (name: string, key: unknown) => of(name).get(key),
    getAll: async (name: string) => [...of(name).values()],
    put: async (name: string, value: Record<string, unknown>, key?: unknown) => objectStore(name).put(value, key),
    delete: async (name: string, key: unknown) => void of(name).delete(key),
    transaction: (names: string | readonly string[]) => ({
      store: objectStore(typeof names === "string" ? names : (names[0] ?? "")),
      objectStore,
      done: Promise.resolve(),
    }),
  } as unknown as Database;
}
