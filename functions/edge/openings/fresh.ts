import { type AttachedVersion, genesis } from "#core/ledger/index.ts";
import type { Services } from "../services.ts";

/**
 * The same services for jobs whose ids were drawn just now: nothing is there to be asked for, and the company's versions are read
 * once however many of them take them over.
 */
export function freshServices(services: Services): Services {
  const versions = new Map<string, Promise<readonly AttachedVersion[]>>();
  return {
    ...services,
    ledgers: {
      ...services.ledgers,
      stand: async () => ({ head: genesis, known: new Map() }),
      versions: (company, digests) => {
        const key = [company, ...digests].join(" ");
        const before = versions.get(key) ?? services.ledgers.versions(company, digests);
        versions.set(key, before);
        return before;
      },
    },
  };
}
