import { type MessageAbout, messageText, readSettings, warrantyCalendar } from "#core/record/index.ts";
import { readTerms, warrantyClocks } from "#core/warranty/index.ts";
import { type NewMessage, settings as settingsShape } from "#core/wire/index.ts";
import type { Message } from "#functions/shared/index.ts";
import type { Place } from "../adapters/ledgers.ts";
import type { Session } from "../adapters/sessions.ts";
import { newId } from "../chance.ts";
import { currentJob } from "../jobs/read.ts";
import type { Services } from "../services.ts";
import { termsSaid } from "../warranties/terms.ts";

/** A message about one job, from the company as its settings say it now. */
export async function messageAbout(
  services: Services,
  { company }: Session,
  { job }: Place,
  { kind, to, language, link = "", what = "" }: NewMessage,
  { origin, now }: { readonly origin: string; readonly now: number },
): Promise<Message> {
  const [{ state }, content = {}, said] = await Promise.all([
    currentJob(services, { company, job }),
    services.companies.settings(company),
    termsSaid(services, company),
  ]);
  const own = readSettings(content);
  const read = settingsShape.safeParse(content);
  const address = read.success ? read.data.officeMail : undefined;
  const title = state.opened?.title ?? "";
  const clocks = { ...warrantyClocks(state), language };
  const terms = readTerms(clocks.ownTerms ?? said);
  const about: MessageAbout =
    kind === "warranty"
      ? { kind, clocks, terms }
      : kind === "others"
        ? { kind, link: `${origin}${link}`, what }
        : { kind, link: `${origin}${link}` };
  const words = messageText({ about, language, job: title, name: to.name, company: own, at: now });
  return {
    ...words,
    ...(address !== undefined && { from: { name: own.name, address } }),
    to: { ...(to.name !== undefined && { name: to.name }), address: to.address },
    language,
    at: now,
    id: newId(),
    ...(kind === "warranty" && { calendar: warrantyCalendar({ job, title, clocks, terms, stamp: now }) }),
  };
}
