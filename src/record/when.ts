import { type CalendarDay, momentIn, typedDay } from "../units/index.ts";

export { typedDay } from "../units/index.ts";

export type Language = "en" | "es";

const months: Readonly<Record<Language, readonly string[]>> = {
  en: ["January", "February", "March", "April", "May", "June", "July", "August", "September", "October", "November", "December"],
  es: ["enero", "febrero", "marzo", "abril", "mayo", "junio", "julio", "agosto", "septiembre", "octubre", "noviembre", "diciembre"],
};

/** A day as it prints: '12 May 2026', '12 de mayo de 2026'. Never a form in which day and month could be mistaken. */
export function dayText({ year, month, day }: CalendarDay, language: Language): string {
  const name = months[language][month - 1] ?? "";
  return language === "es" ? `${day} de ${name} de ${year}` : `${day} ${name} ${year}`;
}

/** '12 May 2026, 9:04 EDT'. */
export function momentText(milliseconds: number, zone: string, language: Language): string {
  const moment = momentIn(milliseconds, zone);
  return `${dayText(moment, language)}, ${moment.hour}:${String(moment.minute).padStart(2, "0")} ${moment.zoneName}`;
}

/** A camera's wall clock as it wrote it, '2026-05-12T07:05:00', in the record's way; anything else as it stands. */
export function clockText(text: string, language: Language): string {
  const match = /^(\d{4}-\d{2}-\d{2})[T ](\d{2}):(\d{2})/.exec(text);
  const day = typedDay(match?.[1] ?? "");
  return match === null || day === undefined ? text : `${dayText(day, language)}, ${Number(match[2])}:${match[3]}`;
}

/** A day of every year: '31 October', '31 de octubre'. */
export function yearlyDayText({ month, day }: Pick<CalendarDay, "month" | "day">, language: Language): string {
  const name = months[language][month - 1] ?? "";
  return language === "es" ? `${day} de ${name}` : `${day} ${name}`;
}
