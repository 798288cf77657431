import { dayText, typedDay } from "../../record/index.ts";
import { fixedPerSi, formatQuantity, type QuantityKind } from "../../units/index.ts";
import type { Cell, ColumnKind } from "../question.ts";
import type { QualitySpeaking } from "./speaking.ts";

const formats = new Map<string, Intl.NumberFormat>();

/** Making one costs more than a hundred figures written with it. */
function formatOf(language: string, maximumFractionDigits: number, minimumFractionDigits = 0): Intl.NumberFormat {
  const key = `${language} ${minimumFractionDigits} ${maximumFractionDigits}`;
  const known = formats.get(key) ?? new Intl.NumberFormat(language, { minimumFractionDigits, maximumFractionDigits });
  formats.set(key, known);
  return known;
}

const LEAST_PROBABILITY = 0.001;
const DASH = "–";

/** A figure as it stands in sentences and tables: whole from a hundred on, three figures below. */
export function figureText(value: number, language: string): string {
  const size = Math.abs(value);
  const maximumFractionDigits = Number.isInteger(value) || size >= 100 ? 0 : size >= 10 ? 1 : 2;
  return formatOf(language, maximumFractionDigits).format(value);
}

export const shareText = (share: number, language: string): string => {
  const percent = share * 100;
  const maximumFractionDigits = percent > 0 && percent < 1 ? 1 : 0;
  return formatOf(language, maximumFractionDigits).format(percent);
};

const probabilityText = (value: number, language: string): string => {
  const number = formatOf(language, 3);
  return value < LEAST_PROBABILITY ? `< ${number.format(LEAST_PROBABILITY)}` : number.format(value);
};

const moneyText = (hundredths: number, language: string): string => formatOf(language, 2, 2).format(hundredths / 100);

const INCH = 25_400;
/** Under an eighth of an inch what lies between the marks of a tape is said in decimals: a doubt of 0.004 in is not nothing. */
const SMALL = INCH / 8;
const MARK = INCH / 64;

/** A length that was worked out and not read, micrometres: in decimals. */
export const lengthText = (micrometres: number, units: "inch" | "metric", language: string): string =>
  units === "inch" ? `${formatOf(language, 3).format(micrometres / INCH)} in` : `${formatOf(language, 2).format(micrometres / 1000)} mm`;

export function quantityText(
  kind: string | undefined,
  value: number,
  { units, language }: Pick<QualitySpeaking, "units" | "language">,
): string {
  const size = Math.abs(value);
  const between = Math.abs(size / MARK - Math.round(size / MARK)) * MARK > 2;
  if ((kind ?? "length") === "length" && units === "inch" && size < SMALL && between) return lengthText(value, units, language);
  return formatQuantity((kind ?? "length") as QuantityKind, Math.round(value), { lengths: units, marks: 64 });
}

/** One value by the kind of its column, without its interval. */
export function valueText(kind: ColumnKind, value: number | string, speaking: QualitySpeaking, quantity?: string): string {
  const { language, word } = speaking;
  if (typeof value === "string") {
    const day = kind === "day" ? typedDay(value) : undefined;
    if (day !== undefined) return dayText(day, language);
    return kind === "word" ? word(value) : value;
  }
  if (!Number.isFinite(value)) return DASH;
  switch (kind) {
    case "share":
      return `${shareText(value, language)} %`;
    case "minutes":
      return `${figureText(Math.round(value), language)} min`;
    case "money":
      return moneyText(value, language);
    case "fixed":
      return quantityText(quantity, value, speaking);
    case "probability":
      return probabilityText(value, language);
    default:
      return figureText(value, language);
  }
}

const bare = (text: string): string => text.replace(/ %$/, "");

/** A cell with its interval behind it: '42 % (31 to 55)'. */
export function cellText(kind: ColumnKind, cell: Cell | undefined, speaking: QualitySpeaking): string {
  if (cell === undefined) return DASH;
  if (cell.label !== undefined) return speaking.name(cell.label);
  const of = (value: number | string): string => valueText(kind, value, speaking, cell.kind);
  const value = cell.value === undefined ? DASH : of(cell.value);
  if (cell.low === undefined && cell.high === undefined) return value;
  const [low, high] = [cell.low, cell.high].map((end) => (end === undefined ? "…" : bare(of(end))));
  return `${value} (${low} ${speaking.word("to")} ${high})`;
}

/** How far a fixed unit goes into the one that an axis is drawn in, and that unit's sign. */
export function axisUnit(kind: string | undefined, units: "inch" | "metric"): { readonly per: number; readonly sign: string } {
  const quantity = (kind ?? "count") as QuantityKind;
  const si = fixedPerSi(quantity);
  const inch = units === "inch";
  switch (quantity) {
    case "length":
      return inch ? { per: 25_400, sign: "in" } : { per: 1_000, sign: "mm" };
    case "volume":
      return inch ? { per: 3_785.411784, sign: "gal" } : { per: 1_000, sign: "L" };
    case "flow":
      return inch ? { per: 3_785.411784, sign: "gpm" } : { per: 1_000, sign: "L/min" };
    case "duration":
      return { per: 3_600_000, sign: "h" };
    case "ratio":
      return { per: 10_000, sign: "%" };
    default:
      return { per: si, sign: siSigns[quantity] ?? "" };
  }
}

const siSigns: Partial<Record<QuantityKind, string>> = {
  area: "m²",
  velocity: "m/s",
  angle: "°",
  temperature: "°C",
  power: "W",
  voltage: "V",
  current: "A",
  mass: "kg",
};
