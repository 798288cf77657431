import { join } from "node:path";
import { DatabaseSync } from "node:sqlite";
import type { Store } from "#functions/shared/index.ts";
import { erasedIn } from "./erased-list.ts";
import { written } from "./files.ts";
import { type BackupList, type BackupObject, nameOf } from "./list.ts";
import { type NamedObject, namedObjects } from "./named-objects.ts";

/** As many objects are copied beside each other. */
const TOGETHER = 4;

interface Copied {
  readonly object?: BackupObject;
  /** Why it could not be copied. */
  readonly fault?: string;
  readonly isMissing?: true;
}

async function copyOne(store: Store, folder: string, { key, sha256, must }: NamedObject): Promise<Copied> {
  const found = await store.get(key);
  if (!found.ok) {
    const isMissing = found.refusal.code === "photo-unknown" || found.refusal.code === "record-unknown";
    if (!isMissing) return { fault: `${key}: the store does not give it (${found.refusal.code})` };
    return must ? { fault: `${key}: the rows name it, and it is not in the store`, isMissing } : {};
  }
  const name = nameOf(key);
  const came = await written(join(folder, name), found.value.stream);
  if (came.bytes !== found.value.length) return { fault: `${key}: ${came.bytes} of ${found.value.length} bytes came from the store` };
  if (sha256 !== undefined && came.sha256 !== sha256) return { fault: `${key}: its bytes in the store are not those that its name says` };
  return { object: { key, type: found.value.type, name, ...came } };
}

/** Keys whose rows have gone, or that were erased, since the rows were taken. */
function goneSince(files: readonly string[]): (key: string) => boolean {
  const [named, erased] = [new Set<string>(), new Set<string>()];
  for (const file of files) {
    const now = new DatabaseSync(file, { readOnly: true, timeout: 10_000 });
    try {
      for (const { key } of namedObjects(now)) named.add(key);
      for (const { ref } of erasedIn(now)) erased.add(ref);
    } finally {
      now.close();
    }
  }
  return (key) => !named.has(key) || erased.has(key);
}

/**
 * Copies what the rows name into the folder.
 * @throws naming every object that is missing or differs, unless it was erased meanwhile
 */
export async function copyObjects(
  store: Store,
  folder: string,
  named: readonly NamedObject[],
  databases: readonly string[],
): Promise<Pick<BackupList, "objects" | "gone">> {
  const objects: BackupObject[] = [];
  const missing: { readonly key: string; readonly fault: string }[] = [];
  const faults: string[] = [];
  const queue = [...named];
  const work = async (): Promise<void> => {
    for (let next = queue.shift(); next !== undefined; next = queue.shift()) {
      const { object, fault, isMissing } = await copyOne(store, folder, next);
      if (object !== undefined) objects.push(object);
      else if (fault !== undefined && isMissing) missing.push({ key: next.key, fault });
      else if (fault !== undefined) faults.push(fault);
    }
  };
  await Promise.all(Array.from({ length: TOGETHER }, work));
  const gone = missing.length === 0 ? () => false : goneSince(databases);
  const all = [...faults, ...missing.filter(({ key }) => !gone(key)).map(({ fault }) => fault)];
  if (all.length > 0) throw new Error(`No backup was taken:\n${all.map((line) => `  ${line}`).join("\n")}`);
  const byKey = (a: { readonly key: string }, b: { readonly key: string }): number => (a.key < b.key ? -1 : 1);
  return { objects: objects.sort(byKey), gone: missing.map(({ key }) => key).sort() };
}
