import type { ErasedRow } from "../adapters/erased.ts";
import type { Place } from "../adapters/ledgers.ts";
import type { Statement } from "../adapters/statement.ts";
import type { Services } from "../services.ts";
import { NAMELESS } from "./found.ts";

/** Rows that are changed, and how older backups are told of it. */
export interface InPlace {
  readonly rows: readonly ErasedRow[];
  readonly statements: readonly Statement[];
}

/** Of a job's links, receivers and words that name somebody, without the name. */
export async function linksNameless(services: Services, place: Place, isNamed: (text: string) => boolean): Promise<InPlace> {
  const { company } = place;
  const records = await services.records.ofJob(place);
  const releases = (await Promise.all(records.map(({ id }) => services.releases.ofRecord(company, id)))).flat();
  const others = await services.othersLinks.ofJob(place);
  const named = (text: string): boolean => text !== NAMELESS && isNamed(text);
  const [to, asked] = [releases.filter(({ receiver }) => named(receiver)), others.filter(({ what }) => named(what))];
  return {
    rows: [
      ...to.map(({ hash }): ErasedRow => ({ kind: "release", ref: hash, content: NAMELESS })),
      ...asked.map(({ hash }): ErasedRow => ({ kind: "others link", ref: hash, content: NAMELESS })),
    ],
    statements: [
      ...to.map(({ hash }) => services.erasing.receiver(company, hash, NAMELESS)),
      ...asked.map(({ hash }) => services.erasing.asked(company, hash, NAMELESS)),
    ],
  };
}
