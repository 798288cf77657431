import { typedDay } from "../units/index.ts";
import { dayAt, daysLater, isAfter, type WarrantyClocks, type WarrantyTerms } from "../warranty/index.ts";
import { daysToCome, soonestFirst } from "./days-to-come.ts";
import { makeWarrantySayer } from "./say-warranty.ts";
import { fill } from "./speaking.ts";
import type { Language } from "./when.ts";
import { type MessageText, messagesEn } from "./words/messages-en.ts";
import { messagesEs } from "./words/messages-es.ts";

/** So many days ahead a notice looks (own). One goes out each week, so that every day is told four times, and one that was lost costs nothing. */
export const NOTICE_DAYS = 30;

export interface NoticeInput {
  readonly jobs: readonly {
    readonly title: string;
    readonly ownNumber?: string;
    readonly clocks: WarrantyClocks;
    readonly terms: WarrantyTerms;
  }[];
  /** Covers of papers from before; `end` as YYYY-MM-DD. */
  readonly old: readonly { readonly number: string; readonly part: string; readonly end: string }[];
  readonly language: Language;
  readonly company: { readonly name: string; readonly zone: string };
  /** Milliseconds. */
  readonly at: number;
}

/** What the office is told of all its warranties: days of the next `NOTICE_DAYS`, the nearest first. Undefined where none is near. */
export function noticeText({
  jobs,
  old,
  language,
  company,
  at,
}: NoticeInput): { readonly subject: string; readonly text: string } | undefined {
  const say = makeWarrantySayer(language);
  const lastIn = (zone: string) => daysLater(dayAt(at, zone), NOTICE_DAYS);
  const last = lastIn(company.zone);
  const near = [
    ...jobs.flatMap(({ title, ownNumber, clocks, terms }) =>
      daysToCome(clocks, terms, language, [ownNumber, title].filter((one) => one !== undefined).join(" "), at).filter(
        ({ day }) => !isAfter(day, lastIn(clocks.zone)),
      ),
    ),
    ...old.flatMap(({ number, part, end }) => {
      const day = typedDay(end);
      const isNear = day !== undefined && !isAfter(day, last) && !isAfter(dayAt(at, company.zone), day);
      return isNear ? [{ day, says: say.text("calendar-ends", { part, job: number }) }] : [];
    }),
  ].sort(soonestFirst);
  if (near.length === 0) return undefined;
  const own = language === "es" ? messagesEs : messagesEn;
  const words = (key: MessageText): string => fill(own[key], { day: say.day(last), days: String(NOTICE_DAYS) });
  const lines = near.map(({ day, says }) => `- ${say.day(day)}: ${says}`).join("\n");
  return { subject: words("notice-subject"), text: `${[words("notice-1"), lines, words("notice-2"), company.name].join("\n\n")}\n` };
}
