import type { Json } from "#core/ledger/index.ts";
import { defaultSheet } from "../sheets/index.ts";
import type { Client } from "./client.ts";
import { company } from "./company.ts";
import type { Version } from "./founding.ts";
import { type JobBook, openBook, type Phone, randomId } from "./phone.ts";
import { type JobScript, moment } from "./script.ts";

/** The office opens a job with all that a phone needs before it leaves signal. */
export async function openJob(desk: Phone, office: Client, script: JobScript, versions: readonly Version[]): Promise<JobBook> {
  const sheet = script.sheet ?? defaultSheet().id;
  const taken = versions.filter(
    ({ thing, name }) => thing === "settings" || (thing === "sheet" ? name === sheet : script.kitCards.includes(name)),
  );
  const book = openBook(randomId(), Object.fromEntries(taken.map(({ digest, content }) => [digest, content])));
  const opened = moment(script.opened);
  const { title, ownNumber, figures, switches } = script;
  const { zone, language, units } = company;
  await desk.enter(book, "job-opened", opened, { what: { title, ownNumber, zone, language, units }, who: script.who });
  for (const { thing, name, number, digest } of taken)
    await desk.enter(book, "version-taken-over", opened, { what: { thing, name, number, digest } });
  await desk.enter(book, "design-set", opened, { what: { figures: figures as unknown as Json, switches } });
  await office.empty(book, true);
  return book;
}
