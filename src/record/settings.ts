import type { JobState } from "../job/index.ts";
import type { Json } from "../ledger/index.ts";
import { readTerms, type WarrantyTerms } from "../warranty/index.ts";

/** What the record needs of a company's settings. The warranty's text is the company's own: the program ships none. */
export interface CompanySettings {
  readonly name: string;
  readonly lines: readonly string[];
  readonly zone: string;
  readonly units: "inch" | "metric";
  readonly language: "en" | "es";
  readonly paper: "letter" | "a4";
  /** Names in full in the customer's edition; otherwise role and initials. */
  readonly namesInFull: boolean;
  readonly warranty: WarrantyTerms;
  /** SHA-256 of the company's mark as it was sent. */
  readonly mark?: string;
  readonly colours?: { readonly lines: string; readonly words: string };
}

type Fields = { readonly [key: string]: Json };
const fields = (value: Json | undefined): Fields =>
  typeof value === "object" && value !== null && !Array.isArray(value) ? (value as Fields) : {};
const text = (value: Json | undefined, otherwise = ""): string => (typeof value === "string" ? value : otherwise);
const texts = (value: Json | undefined): readonly string[] =>
  Array.isArray(value) ? value.filter((v): v is string => typeof v === "string") : [];
/** Settings as the company saved them; what it has not said has a plain default. Never refuses: a record prints anyway. */
export function readSettings(json: Json | undefined): CompanySettings {
  const given = fields(json);
  return {
    name: text(given.name),
    lines: texts(given.lines),
    zone: text(given.zone, "UTC"),
    units: given.units === "metric" ? "metric" : "inch",
    language: given.language === "es" ? "es" : "en",
    paper: given.paper === "a4" ? "a4" : "letter",
    namesInFull: given.namesInFull === true,
    warranty: readTerms(given.warranty),
    ...readLook(given),
  };
}

const COLOUR = /^#[0-9a-f]{6}$/;

function readLook(given: Fields): Pick<CompanySettings, "mark" | "colours"> {
  const mark = text(given.mark);
  const { lines, words } = fields(given.colours);
  return {
    ...(/^[0-9a-f]{64}$/.test(mark) && { mark }),
    ...(COLOUR.test(text(lines)) && COLOUR.test(text(words)) && { colours: { lines: text(lines), words: text(words) } }),
  };
}

/**
 * What the job itself says of zone, language and units comes before the company's settings. Mark and colours are no terms: they
 * are the company's of today.
 */
export function jobSettings({ opened, settings }: JobState, given: Json): CompanySettings {
  const { zone, language, units, mark: _mark, colours: _colours, ...own } = readSettings((settings as Json | undefined) ?? given);
  return {
    ...own,
    ...readLook(fields(given)),
    zone: opened?.zone ?? zone,
    language: opened?.language ?? language,
    units: opened?.units ?? units,
  };
}
