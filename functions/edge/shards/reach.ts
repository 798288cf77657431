import { ofCompany, type Services } from "../services.ts";
import { fenced, isClosed } from "./fence.ts";
import type { Placed } from "./remembered.ts";
import { databaseOf, FIRST, type ShardName } from "./shards.ts";

const isOne = ({ directory }: Services): boolean => directory.shards.length <= 1;

function bound(services: Services, placed: Placed): Services {
  const { environment, directory } = services;
  const database = fenced(databaseOf(environment, placed.shard), placed.company);
  return { ...services, ...ofCompany(environment, database, (key) => directory.note(key, placed)) };
}

/** The services of a company, its place asked anew. */
export async function at(services: Services, company: string): Promise<Services> {
  return isOne(services) ? services : bound(services, await services.directory.of(company));
}

/**
 * The services of the company that a token, code or credential leads to, asked anew. Those of one that leads nowhere look into the
 * first shard, where it is not found: unknown and ended take the same way.
 */
export async function behind(services: Services, key: string): Promise<Services> {
  if (isOne(services)) return services;
  const placed = await services.directory.leads(key, true);
  return placed === undefined ? onShard(services, FIRST) : bound(services, placed);
}

/** The same by what is remembered; where the company has been moved meanwhile, once more by its new place. */
export async function behindRemembered<T>(services: Services, key: string, work: (home: Services) => Promise<T>): Promise<T> {
  if (isOne(services)) return work(services);
  const placed = await services.directory.leads(key, false);
  if (placed === undefined) return work(onShard(services, FIRST));
  try {
    return await work(bound(services, placed));
  } catch (thrown) {
    if (!isClosed(thrown)) throw thrown;
    return work(await at(services, placed.company));
  }
}

/** The services of a company that is about to be founded, or of the one that has the id already. */
export async function whereFounded(services: Services, company: string): Promise<Services> {
  return isOne(services) ? services : bound(services, await services.directory.found(company));
}

/** A whole shard, for what goes through the companies in it. It writes nothing of theirs: that is done with `at`. */
export function onShard(services: Services, shard: ShardName): Services {
  if (isOne(services)) return services;
  const { environment } = services;
  return { ...services, ...ofCompany(environment, databaseOf(environment, shard), async () => false) };
}
