import type { OwedRow } from "../adapters/owed.ts";
import type { PhotoHint } from "../environment.ts";
import { FIRST_DUE_MS } from "../jobs/consequences.ts";
import { log, thrownOf } from "../log.ts";
import type { Services } from "../services.ts";
import { at } from "../shards/index.ts";
import { compare } from "./seen-before.ts";
import { tell } from "./tell.ts";

/**
 * Has a photo read and tells every job that names it. True when nothing is left to do. Said twice it does no harm: a photo
 * already read is only told again, and a job is told once.
 */
export async function readOwed(services: Services, { company, sha256 }: PhotoHint): Promise<boolean> {
  const photo = await services.photos.get(company, sha256);
  if (!photo) {
    // Nothing under this name was ever acknowledged.
    await services.owed.paid({ kind: "read", company, ref: sha256 });
    return true;
  }
  if (photo.state === "stored") {
    const facts = await services.machines.readPhoto(company, sha256);
    if (!facts.ok) {
      await services.owed.failed({ kind: "read", company, ref: sha256 }, facts.refusal.code);
      return false;
    }
    const due = services.clock() + FIRST_DUE_MS;
    await services.photos.keepFacts(company, facts.value, due, services.likenesses.keep(company, facts.value, due));
    await compare(services, company, sha256);
  } else {
    await services.owed.paid({ kind: "read", company, ref: sha256 });
  }
  for (const job of await services.photos.jobsOf(company, sha256)) await tell(services, { company, job }, sha256);
  return true;
}

/** Claims what is due: readings go to the queue again, tellings and comparisons are done here, each for itself. */
export async function sweep(services: Services): Promise<void> {
  const due = await services.owed.claim(services.clock());
  await services.owed.hint(due.filter(({ kind }) => kind === "read").map(({ company, ref }) => ({ company, sha256: ref })));
  for (const row of due.filter(({ kind }) => kind === "compare"))
    await alone(services, row, async () => compare(await at(services, row.company), row.company, row.ref));
  for (const row of due.filter(({ kind }) => kind === "tell")) {
    const [job = "", sha256 = ""] = row.ref.split("/");
    await alone(services, row, async () => tell(await at(services, row.company), { company: row.company, job }, sha256));
  }
}

/** One row that breaks must not keep those claimed with it from being done: they would wait for their next turn. */
async function alone(services: Services, row: OwedRow, work: () => Promise<unknown>): Promise<void> {
  try {
    await work();
  } catch (thrown) {
    log({ event: "sweep-broke", thrown: thrownOf(thrown) });
    await at(services, row.company)
      .then((home) => home.owed.failed(row, "broke"))
      .catch(() => undefined);
  }
}

/** What was owed to a job by an append just now; the sweep does what this does not get to. */
export async function tellKnown(services: Services, company: string, job: string, sha256s: readonly string[]): Promise<void> {
  for (const sha256 of sha256s) {
    const photo = await services.photos.get(company, sha256);
    if (photo && photo.state !== "stored") await tell(services, { company, job }, sha256);
  }
}
