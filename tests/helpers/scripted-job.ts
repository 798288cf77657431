import { type JobState, jobState } from "#core/job/index.ts";
import type { Json } from "#core/ledger/index.ts";
import { kitCards, settings } from "#infra/demo/company.ts";
import { enterAll } from "#infra/demo/enter.ts";
import { openBook, Phone, sha256Hex } from "#infra/demo/phone.ts";
import { type JobScript, moment } from "#infra/demo/script.ts";
import { defaultSheet, defaultSheetJson, oldPondSheet, oldPondSheetJson } from "#infra/sheets/index.ts";

/** A job of the demo as its lines say it, entered without screens, network or edge: what a played one is compared with. */
export async function scriptedJob(script: JobScript): Promise<JobState> {
  const [sheet, json] = script.sheet === undefined ? [defaultSheet(), defaultSheetJson] : [oldPondSheet(), oldPondSheetJson];
  const digest = (content: Json): string => sha256Hex(new TextEncoder().encode(JSON.stringify(content)));
  const things = [
    ["sheet", sheet.id, json] as const,
    ["settings", "settings", settings] as const,
    ...kitCards.filter(({ id }) => script.kitCards.includes(id)).map((card) => ["kit card", card.id, card as unknown as Json] as const),
  ];
  const book = openBook("job", Object.fromEntries(things.map(([, , content]) => [digest(content), content])));
  const office = new Phone("office");
  const opened = moment(script.opened);
  await office.enter(book, "job-opened", opened, { what: { title: script.title, zone: "America/Chicago", language: "en", units: "inch" } });
  for (const [thing, name, content] of things)
    await office.enter(book, "version-taken-over", opened, { what: { thing, name, number: 1, digest: digest(content) } });
  await office.enter(book, "design-set", opened, { what: { figures: script.figures as unknown as Json, switches: script.switches } });
  const shared = { book, sheet, script, photos: new Map(), labels: new Map(), fixes: false };
  await enterAll({ ...shared, phone: office }, script.office);
  await enterAll({ ...shared, phone: new Phone("crew") }, script.crew);
  await enterAll({ ...shared, phone: office }, script.afterwards);
  return jobState({ entries: book.entries, versions: book.versions });
}
