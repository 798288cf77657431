import {
  asTyped,
  type Clearance,
  type Finding,
  factsOf,
  isInstant,
  type JobState,
  jobWho,
  siteMarks,
  tableFields,
} from "../../job/index.ts";
import type { Json } from "../../ledger/index.ts";
import { fixedPerSi, instantText, type QuantityKind } from "../../units/index.ts";
import type { Sayer } from "../say.ts";
import type { Language } from "../when.ts";
import { type ExportText, exportEn } from "../words/export-en.ts";
import { exportEs } from "../words/export-es.ts";
import type { Cell } from "./csv.ts";

export const exportTables = ["jobs", "readings", "findings"] as const;
export type ExportTable = (typeof exportTables)[number];

/** One job as its tables are made from. */
export interface JobExported {
  readonly job: string;
  readonly state: JobState;
  readonly findings: readonly Finding[];
  readonly clearances: readonly Clearance[];
  readonly sayer: Sayer;
  /** Names of the company's people by their ids. */
  readonly people: Readonly<Record<string, string>>;
  readonly language: Language;
}

const jobColumns = [
  "number",
  "title",
  "order",
  "invoice",
  "address",
  "latitude",
  "longitude",
  "heightMark",
  "tieMarks",
  "customer-name",
  "customer-phone",
  "customer-contact",
  "onSite-name",
  "onSite-phone",
  "onSite-contact",
  "receiver-name",
  "receiver-phone",
  "receiver-contact",
  "language",
  "crew",
] as const satisfies readonly (keyof typeof tableFields)[];
const jobMore = ["job", "opened", "sheet-version", "covered", "coverings", "entries"] as const satisfies readonly ExportText[];
const ofJob = ["own-number", "job"] as const satisfies readonly ExportText[];
const readingColumns = [
  "entry",
  "when",
  "step",
  "item",
  "title",
  "tag",
  "typed",
  "unit",
  "instrument",
  "set-up",
  "mark",
  "counts",
  "by",
] as const;
const findingColumns = [
  "step",
  "check",
  "title",
  "tag",
  "verdict",
  "weight",
  "holds",
  "kind",
  "value",
  "doubt",
  "aim",
  "lower",
  "upper",
  "says",
] as const;

const texts = { en: exportEn, es: exportEs } as const;

/** The first line of a table. A table of jobs has the heads by which it is read in again. */
export function exportHeads(table: ExportTable, language: Language): readonly string[] {
  const named = (columns: readonly ExportText[]): readonly string[] => columns.map((column) => texts[language][column]);
  if (table === "jobs") return [...jobColumns.map((field) => tableFields[field][language][0]), ...named(jobMore)];
  return named([...ofJob, ...(table === "readings" ? readingColumns : findingColumns)]);
}

type Fields = { readonly [key: string]: Json };
const fields = (value: Json | undefined): Fields =>
  typeof value === "object" && value !== null && !Array.isArray(value) ? (value as Fields) : {};
const text = (value: Json | undefined): string | undefined => (typeof value === "string" ? value : undefined);
const iso = (milliseconds: number): string => instantText(Math.round(milliseconds));
const E7 = 1e7;

function jobRow({ job, state, clearances, people, sayer }: JobExported): readonly Cell[] {
  const { opened, sheet } = state;
  const who = jobWho(state);
  const marks = siteMarks(state);
  const where = fields(factsOf(state, "site-located").at(-1)?.entry.where);
  const degrees = (name: string): Cell => (typeof where[name] === "number" ? where[name] / E7 : undefined);
  const contact = (of: string): readonly Cell[] => {
    const { name, phone, contact: mail } = fields(who[of]);
    return [text(name), text(phone), text(mail)];
  };
  const first = state.facts.find(({ kind }) => kind === "job-opened");
  return [
    opened?.ownNumber,
    opened?.title,
    opened?.order,
    opened?.invoice,
    text(who.address),
    degrees("latitude"),
    degrees("longitude"),
    marks.heightMark,
    marks.tieMarks.join("; "),
    ...contact("customer"),
    ...contact("onSite"),
    ...contact("receiver"),
    opened?.language,
    (opened?.crew ?? [])
      .map((person) => people[person] ?? "")
      .filter((name) => name !== "")
      .join("; "),
    job,
    first && iso(first.at),
    sheet && `${sayer.words(sheet.title)}, ${sheet.version}`,
    clearances.filter(({ covered }) => covered !== undefined).length,
    clearances.length,
    state.ledger.entries.length,
  ];
}

function readingRows({ job, state, sayer, people, language }: JobExported): readonly (readonly Cell[])[] {
  const say = texts[language];
  const setUps = [...state.setUps.keys()];
  return state.facts
    .filter(({ kind }) => kind === "reading-taken")
    .map(({ what, entry, at, standing, id }) => {
      const item = state.sheet?.items.find((one) => one.id === what.item);
      const instrument = state.sheet?.instruments.find((one) => one.id === (what.instrument ?? item?.instrument));
      const setUp = typeof what.setUp === "string" ? setUps.indexOf(what.setUp) + 1 : undefined;
      const tag = text(what.tag);
      return [
        state.opened?.ownNumber,
        job,
        entry.number ?? id,
        iso(isInstant(what.at) ? what.at : at),
        item?.step,
        text(what.item),
        item && sayer.title({ item: item.id, ...(tag === undefined ? {} : { tag }) }),
        tag,
        asTyped(String(what.typed ?? ""), ""),
        text(what.unit),
        instrument && sayer.words(instrument.title),
        setUp,
        text(what.mark),
        standing === "counts" ? say.yes : say.no,
        people[entry.author.person],
      ];
    });
}

/** A stored integer in the SI unit of its kind. */
const si = (kind: QuantityKind | undefined, value: number | undefined): Cell =>
  kind === undefined || value === undefined ? undefined : kind === "instant" ? iso(value) : value / fixedPerSi(kind);

function findingRows({ job, state, findings, sayer }: JobExported): readonly (readonly Cell[])[] {
  return findings.map((finding) => {
    const { step, check, tag, weight, holds, kind, value, doubt, aim, lower, upper } = finding;
    const figures = [value, doubt, aim, lower, upper].map((one) => si(kind, one));
    return [
      state.opened?.ownNumber,
      job,
      step,
      check,
      sayer.titleOf(finding),
      tag,
      sayer.verdictWord(finding),
      weight,
      holds,
      kind,
      ...figures,
      sayer.finding(finding),
    ];
  });
}

/** The lines of one job in a table. Figures of findings are in SI units, times in UTC, readings as they were typed. */
export function exportRows(table: ExportTable, exported: JobExported): readonly (readonly Cell[])[] {
  if (table === "jobs") return [jobRow(exported)];
  return table === "readings" ? readingRows(exported) : findingRows(exported);
}
