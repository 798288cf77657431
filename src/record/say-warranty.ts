import type { CalendarDay } from "../units/index.ts";
import {
  type Cover,
  type CoverStanding,
  type HandedOver,
  isAfter,
  type ServiceDue,
  type ServiceKind,
  standingOn,
} from "../warranty/index.ts";
import { fill } from "./speaking.ts";
import { dayText, type Language } from "./when.ts";
import { recordEn } from "./words/record-en.ts";
import { recordEs } from "./words/record-es.ts";
import { type WarrantyText, warrantyEn } from "./words/warranty-en.ts";
import { warrantyEs } from "./words/warranty-es.ts";

/** Makes every sentence of handing over, covers and services in one language. */
export function makeWarrantySayer(language: Language) {
  const own = language === "es" ? warrantyEs : warrantyEn;
  const record = language === "es" ? recordEs : recordEn;
  const text = (key: WarrantyText, figures: Readonly<Record<string, string>> = {}): string => fill(own[key], figures);
  const day = (of: CalendarDay): string => dayText(of, language);
  const serviceName = (kind: ServiceKind): string => text(`service-${kind}`);

  /** What a service's occasion comes to: done, passed without an entry, or still to come. */
  function service({ kind, day: due, until, done }: ServiceDue, today: CalendarDay): string {
    const figures = { service: serviceName(kind), due: day(due), until: day(until) };
    if (done !== undefined) return text("service-is-done", { ...figures, day: day(done.day) });
    return text(isAfter(today, until) ? "service-is-missed" : "service-is-next", figures);
  }

  function registration({ registration: of }: Cover, { registration: is }: CoverStanding): readonly string[] {
    if (of === undefined || is === undefined) return [];
    const { done } = of;
    const figures = { whom: of.with, by: day(of.by), day: done ? day(done.day) : "", number: done?.number ?? "" };
    return [text(`register-${is}`, figures)];
  }

  /** Everything that a cover's end and its conditions rest on, one sentence each, as of a day. */
  function conditions(cover: Cover, today: CalendarDay): readonly string[] {
    const standing = standingOn(cover, today);
    const passed = cover.services.filter(({ done, until }) => done !== undefined || isAfter(today, until));
    return [
      ...(cover.kept ? [text("kept", { why: cover.kept.why })] : []),
      ...cover.replaced.map(({ day: of, why, rule }) =>
        text(`replaced-${why === "under warranty" ? (rule ?? "not said") : why}`, { day: day(of) }),
      ),
      ...(cover.newOwner ? [text(`owner-${cover.newOwner.becomes}`, { day: day(cover.newOwner.day) })] : []),
      ...registration(cover, standing),
      ...passed.map((one) => service(one, today)),
      ...(standing.next ? [service(standing.next, today)] : []),
    ];
  }

  return {
    text,
    day,
    serviceName,
    service,
    conditions,
    standing: (is: CoverStanding["is"]): string => text(`is-${is}`),
    lasts: (months: number): string => fill(record.months, { months: String(months) }),
    starts: ({ starts }: Pick<Cover, "starts">): string => record[`starts-${starts}`],
    ends: ({ end }: Cover): string => (end === undefined ? record["ends-unknown"] : fill(record["ends-on"], { day: day(end) })),
    /** Handed over, on its way by use, or not. */
    handed: (over: HandedOver | undefined, today: CalendarDay): string => {
      if (over === undefined) return text("handed-not");
      const because = over.because === undefined ? "" : text(`because-${over.because}`);
      const isComing = over.how === "accepted by use" && isAfter(over.day, today);
      return text(isComing ? "handed-will be" : `handed-${over.how}`, { day: day(over.day), because });
    },
  };
}

export type WarrantySayer = ReturnType<typeof makeWarrantySayer>;
