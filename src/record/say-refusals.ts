import type { Refusal, RefusalCode } from "../outcome/index.ts";
import { doubtText } from "./figures-text.ts";
import { fill, type Speaking } from "./speaking.ts";
import { dayText, typedDay } from "./when.ts";
import { refusalsEn } from "./words/refusals-en.ts";
import { refusalsEs, wantedEs } from "./words/refusals-es.ts";

const known: Readonly<Record<"en" | "es", Readonly<Partial<Record<RefusalCode, string>>>>> = { en: refusalsEn, es: refusalsEs };

/** The sentence of a refusal. */
export function makeRefusals({ language, units, refusals = {} }: Pick<Speaking, "language" | "units" | "refusals">) {
  /** Figures of a refusal as text. Only those of a sheet's limits and by how much ties miss are quantities, in micrometres. */
  function refusalFigure(code: Refusal["code"], name: string, value: string | number): string {
    if (typeof value === "number")
      return code === "sheet-limit-undecidable" || code === "sheet-limit-on-nominal" || (code === "ties-cannot-meet" && name === "miss")
        ? doubtText("length", value, { lengths: units })
        : String(value);
    const day = name === "until" ? typedDay(value) : undefined;
    if (day !== undefined) return dayText(day, language);
    if (name === "wanted" && language === "es") return wantedEs[value] ?? value;
    // so that what was typed has visible borders
    if (name === "found" && value !== "") return language === "es" ? `«${value}»` : `“${value}”`;
    return value;
  }

  /** A refusal's sentence: what is wrong and how to fix it. */
  function refusal(r: Refusal): string {
    const figures = Object.entries(r.figures).map(([name, value]) => [name, refusalFigure(r.code, name, value)]);
    return fill(known[language][r.code] ?? refusals[r.code] ?? r.code, {
      place: r.place,
      ...(r.column === undefined ? {} : { column: String(r.column) }),
      ...Object.fromEntries(figures),
    });
  }

  return refusal;
}
