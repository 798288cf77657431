import type { LaidAsideList } from "#core/wire/index.ts";
import { LAID_ASIDE_TRIES, type OwedRow } from "../adapters/owed.ts";
import type { Services } from "../services.ts";

/** Rows that are listed at a time. */
const MOST = 200;

interface Named {
  readonly kind: OwedRow["kind"];
  readonly photo: string;
  readonly job?: string | undefined;
}

const refOf = ({ kind, photo, job }: Named): string => (kind === "tell" ? `${job ?? ""}/${photo}` : photo);

function namedBy({ kind, ref }: Pick<OwedRow, "kind" | "ref">): { readonly photo: string; readonly job?: string } {
  const [job = "", photo = ""] = kind === "tell" ? ref.split("/") : ["", ref];
  return kind === "tell" ? { photo, job } : { photo };
}

/** What a company is owed and did not go through several times, tried most often first. */
export async function laidAsideOf(services: Services, company: string): Promise<LaidAsideList> {
  const { rows, count } = await services.owed.late(company, MOST);
  const work = rows.map(({ kind, ref, tries, why, due }) => ({
    kind,
    ...namedBy({ kind, ref }),
    tries,
    why,
    next: due,
    laidAside: tries >= LAID_ASIDE_TRIES,
  }));
  return { work, more: count - work.length };
}

/** Begins anew with what is named, or with everything late: due now, its tries forgotten. How many rows that are. */
export async function tryAgainNow(services: Services, company: string, named: readonly Named[] | undefined): Promise<number> {
  const rows = named?.map((one) => ({ kind: one.kind, company, ref: refOf(one) }));
  const again = await services.owed.again(company, services.clock(), rows);
  await services.owed.hint(again.filter(({ kind }) => kind === "read").map(({ ref }) => ({ company, sha256: ref })));
  return again.length;
}
