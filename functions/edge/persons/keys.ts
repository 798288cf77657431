import { blurredKey, originalKey, paperKey, renditionKey, renditionNames } from "#functions/shared/index.ts";
import type { Place } from "../adapters/ledgers.ts";
import { fileKey, recordFiles } from "../records/files.ts";
import type { Services } from "../services.ts";
import { at } from "../shards/index.ts";

/** Every object of these photos and papers: a hash may be the one or the other, and removing what is not there does no harm. */
export async function keysOfFiles({ erasing }: Services, company: string, sha256s: readonly string[]): Promise<readonly string[]> {
  const blurs = await erasing.blurs(company, sha256s);
  return [
    ...sha256s.flatMap((sha256) => [
      originalKey(company, sha256),
      paperKey(company, sha256),
      ...renditionNames.map((name) => renditionKey(company, sha256, name)),
    ]),
    ...blurs.flatMap(({ sha256, digest }) => renditionNames.map((name) => blurredKey(company, sha256, name, digest))),
  ];
}

const endings = [...Object.values(recordFiles).map(({ ending }) => ending), "findings.json"];

/** Every object of a job's records. */
export async function keysOfRecords({ records }: Services, place: Place): Promise<readonly string[]> {
  const rows = await records.ofJob(place);
  return rows.flatMap(({ id, version }) => endings.map((ending) => fileKey({ ...place, id, version }, ending)));
}

/** As many objects are asked of the store in one go. */
const MOST = 200;

/** Has the store let go of what was erased; what it does not answer for is tried again by the next sweep. */
export async function letGo(services: Services): Promise<number> {
  const rows = await services.erasing.notGone(MOST);
  let count = 0;
  for (const { company, key } of rows) {
    const removed = await services.store.remove(key);
    if (!removed.ok) continue;
    await (await at(services, company)).erasing.gone(company, key, services.clock());
    count += 1;
  }
  return count;
}
