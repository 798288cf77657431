import type { Json } from "#core/ledger/index.ts";
import type { BuriedList } from "#core/wire/index.ts";
import { listed } from "../photos/seen-before.ts";
import type { Services } from "../services.ts";
import type { Buried } from "./buried.ts";
import { listedOfAll } from "./listed-all.ts";

type Line = BuriedList["jobs"][number]["lines"][number];

/** A phone that sent something within this time is not silent (own). */
const SILENT_MS = 3_600_000;
/** Of the phones of a job that were last heard of longer ago than this only the last is waited for (own). */
const LONG_SILENT_MS = 7 * 24 * 3_600_000;

/** The lines that still say something now. */
function linesNow({ lines }: Buried, now: number): Buried["lines"] {
  const heard = Math.max(...lines.filter(({ is }) => is === "phone silent").map(({ at = 0 }) => at));
  return lines.filter(({ is, from, at = 0 }) => {
    if (from !== undefined && from <= now) return false;
    return is !== "phone silent" || (now - at >= SILENT_MS && (at === heard || now - at < LONG_SILENT_MS));
  });
}

/** Everything that the company's running jobs have to say, the soonest covering first; a job that has nothing to say is left out. */
export async function buriedList(services: Services, company: string): Promise<BuriedList> {
  const now = services.clock();
  const [rows, people, pairs] = await Promise.all([
    listedOfAll(services, company),
    services.companies.people(company),
    listed(services, company),
  ]);
  const alarms = pairs.filter(({ weight }) => weight === "alarm");
  const jobs: BuriedList["jobs"] = [];
  for (const { job, title, ownNumber, buried } of rows) {
    const unlooked = new Set(buried.unlooked);
    const again = alarms.filter(({ photo, before }) => [photo, before].some(({ sha256 }) => unlooked.has(sha256))).length;
    const said = linesNow(buried, now).map(
      ({ person, phone: _, covering: __, from: ___, title: words, ...line }): Line => ({
        ...line,
        ...(words === undefined ? {} : { title: words as unknown as Json }),
        ...(person === undefined ? {} : { name: people.find(({ id }) => id === person)?.name ?? "" }),
      }),
    );
    const place = said.findIndex(({ is }) => is === "to look at" || is === "open tonight" || is === "phone silent");
    const lines = again === 0 ? said : said.toSpliced(place < 0 ? said.length : place, 0, { is: "seen before", count: again });
    if (lines.length === 0) continue;
    const { soonest } = buried;
    jobs.push({
      job,
      title,
      ...(ownNumber === undefined ? {} : { ownNumber }),
      ...(soonest === undefined ? {} : { soonest }),
      lines,
    });
  }
  const soonness = ({ soonest = Number.MAX_SAFE_INTEGER }: BuriedList["jobs"][number]): number => soonest;
  return { jobs: jobs.sort((a, b) => soonness(a) - soonness(b)), now };
}
