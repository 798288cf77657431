import type { Json } from "#core/ledger/index.ts";
import type { Outcome } from "#core/outcome/index.ts";
import { noticeText, readSettings } from "#core/record/index.ts";
import { type CalendarDay, isoDay } from "#core/units/index.ts";
import { readTerms } from "#core/warranty/index.ts";
import { type OldWarranty, settings as settingsShape } from "#core/wire/index.ts";
import type { Message, MessageAnswer, MessageService } from "#functions/shared/index.ts";
import { newId } from "../chance.ts";
import type { AfterWork } from "../jobs/after-work-of.ts";

/** As much of one company as a notice needs. */
export interface Office {
  settings(): Promise<Json | undefined>;
  language(): Promise<"en" | "es">;
  jobs(): Promise<readonly AfterWork[]>;
  old(): Promise<readonly OldWarranty[]>;
  mail(): Promise<Outcome<MessageService>>;
  send(message: Message): Promise<Outcome<MessageAnswer>>;
}

const isMonday = (day: CalendarDay): boolean => new Date(`${isoDay(day)}T00:00:00Z`).getUTCDay() === 1;

/**
 * On a Monday, the mail that tells a company's office which days of its warranties are near. Only to the address in its settings, and only
 * where a mail service is named: without one the office has the register and each job's calendar file.
 * @param zone the company's; `today` is the day there.
 * @param at milliseconds
 * @returns whether it was sent
 */
export async function sendNotice(office: Office, zone: string, today: CalendarDay, at: number): Promise<boolean> {
  if (!isMonday(today)) return false;
  const content = (await office.settings()) ?? {};
  const read = settingsShape.safeParse(content);
  const address = read.success ? read.data.officeMail : undefined;
  if (address === undefined) return false;
  const mail = await office.mail();
  if (!mail.ok || !mail.value.sends) return false;
  const [language, all, old] = await Promise.all([office.language(), office.jobs(), office.old()]);
  const { name, warranty } = readSettings(content);
  const jobs = all.map(({ clocks, ...of }) => ({
    ...of,
    clocks,
    terms: clocks.ownTerms === undefined ? warranty : readTerms(clocks.ownTerms),
  }));
  const words = noticeText({ jobs, old, language, company: { name, zone }, at });
  if (words === undefined) return false;
  const sent = await office.send({ ...words, from: { name, address }, to: { name, address }, language, at, id: newId() });
  return sent.ok && sent.value.sent;
}
