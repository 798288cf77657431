import { type Refusal, refuse } from "../outcome/index.ts";
import type { QuantityKind } from "../units/index.ts";
import { figureAsked } from "./figures.ts";
import type { Check, CheckFunction, Item, LimitFigure, LimitFunction, OneOf, TagSet, ToleranceSheet } from "./sheet.ts";
import { waterFaults } from "./sheet-water-forms.ts";

const fault = (place: string, wanted: string): Refusal => refuse("sheet-shape", place, { wanted }).refusal;

interface Form {
  readonly least: number;
  readonly most: number;
  /** Of what is read; absent: that of the check. */
  readonly reads?: QuantityKind | "anything";
}

/** How many items each function reads, and of what kind. */
const forms: Readonly<Record<CheckFunction, Form>> = {
  "single value": { least: 1, most: 100 },
  "out of level": { least: 4, most: 4 },
  "fourth place": { least: 4, most: 4 },
  "moved since": { least: 1, most: 100 },
  steady: { least: 2, most: 2 },
  "level along a lip": { least: 2, most: 2 },
  "at least one of": { least: 1, most: 100, reads: "anything" },
  "time passed since": { least: 1, most: 100, reads: "instant" },
  "between two instants": { least: 2, most: 2, reads: "instant" },
  "loss a day": { least: 2, most: 2, reads: "length" },
  "short of the socket": { least: 1, most: 1 },
  "flow as measured": { least: 1, most: 12, reads: "anything" },
  "room for rain": { least: 1, most: 1 },
  "found by ties": { least: 2, most: 12 },
  "stone on the lid": { least: 1, most: 4, reads: "length" },
  "voltage drop": { least: 1, most: 1, reads: "length" },
};

/** Limits that an item is typed for. */
const typedLimits: ReadonlySet<LimitFunction> = new Set(["as typed", "set time", "cure time"]);

const isFigure = (limit: LimitFigure | undefined): limit is Exclude<LimitFigure, number> => typeof limit === "object";

function limitFaults(sheet: ToleranceSheet, check: Check, place: string, itemOf: (id: string) => Item | undefined): readonly Refusal[] {
  return [check.aim, check.lower, check.upper].filter(isFigure).flatMap((limit) => {
    if (limit.function === "design figure" && limit.figure === undefined) return [fault(`${place}/figure`, "the figure's name")];
    if (figureAsked(sheet, limit.figure ?? "")?.kind === "text") return [fault(`${place}/figure`, `a figure of kind ${check.kind}`)];
    if (limit.function === "water left inside" && (limit.items ?? []).length === 0 && limit.occasion === undefined)
      return [fault(`${place}/items`, "the answers on water outside")];
    if (!typedLimits.has(limit.function)) return [];
    return itemOf(limit.item ?? "")?.quantity === check.kind ? [] : [fault(`${place}/item`, `a reading of kind ${check.kind}`)];
  });
}

function instantsFaults({ kind, begins }: Check, place: string): readonly Refusal[] {
  return [
    ...(begins === undefined ? [fault(`${place}/begins`, "the step that it looks at")] : []),
    ...(kind === "duration" ? [] : [fault(`${place}/kind`, "duration")]),
  ];
}

function lossFaults({ kind, leak, bucket, conditions = [] }: Check, place: string): readonly Refusal[] {
  return [
    ...(leak === undefined ? [fault(`${place}/leak`, "which of the two tests it is")] : []),
    ...(kind === "volume" ? [] : [fault(`${place}/kind`, "volume")]),
    ...(bucket === undefined || bucket.length === 2 ? [] : [fault(`${place}/bucket`, "2 items")]),
    ...(conditions.length > 0 ? [] : [fault(`${place}/conditions`, "the answers that say whether it counts")]),
  ];
}

/** What is to have passed before a covering needs one that it holds. */
const passedFaults = ({ before, until, weight }: Check, place: string): readonly Refusal[] =>
  before === undefined || (until === undefined && (before !== "covering" || weight === "holds"))
    ? []
    : [fault(`${place}/before`, "a covering that it holds, or no item that it waits for")];

const socketFaults = ({ kind, minus = [] }: Check, place: string): readonly Refusal[] => [
  ...(minus.length === 1 ? [] : [fault(`${place}/minus`, "1 items")]),
  ...(kind === "length" ? [] : [fault(`${place}/kind`, "length")]),
];

function checkFaults(sheet: ToleranceSheet, check: Check): readonly Refusal[] {
  const place = `sheet/checks/${check.id}`;
  const itemOf = (id: string): Item | undefined => sheet.items.find((item) => item.id === id);
  const { least, most, reads = check.kind } = forms[check.function];
  const { length } = check.items;
  const all = [...check.items, ...(check.minus ?? []), ...(check.bucket ?? [])].flatMap((id) => itemOf(id) ?? []);
  const wrong = reads === "anything" ? [] : all.filter((item) => item.kind !== "reading" || item.quantity !== reads);
  const sets = new Set(all.flatMap((item) => item.tags ?? []));
  const pairs = check.function !== "moved since" || check.minus?.length === length;
  return [
    ...(length < least || length > most ? [fault(`${place}/items`, least === most ? `${least} items` : `${least} items or more`)] : []),
    ...(pairs ? [] : [fault(`${place}/minus`, `${length} items`)]),
    ...wrong.map((item) => fault(`${place}/items/${item.id}`, `a reading of kind ${reads}`)),
    ...(sets.size > 1 ? [fault(`${place}/items`, "items that repeat by one tag set")] : []),
    ...limitFaults(sheet, check, place, itemOf),
    ...(check.function === "between two instants" ? instantsFaults(check, place) : []),
    ...(check.function === "loss a day" ? lossFaults(check, place) : []),
    ...(check.function === "short of the socket" ? socketFaults(check, place) : []),
    ...passedFaults(check, place),
    ...waterFaults(check, place, itemOf),
    ...(check.function === "found by ties" ? all.filter(({ fromMark }) => fromMark !== true) : []).map((item) =>
      fault(`${place}/items/${item.id}`, "a tie, taken from a mark"),
    ),
  ];
}

const winsFaults = ({ wins }: Item, place: string): readonly Refusal[] =>
  wins !== undefined && wins.lower > wins.upper ? [refuse("limits-crossed", `${place}/wins`, wins).refusal] : [];

function itemFaults(item: Item): readonly Refusal[] {
  const place = `sheet/items/${item.id}`;
  return [...winsFaults(item, place), ...kindFaults(item, place)];
}

function kindFaults(item: Item, place: string): readonly Refusal[] {
  if (item.kind === "answer")
    return item.choices?.some((choice) => choice.accepts) ? [] : [fault(`${place}/choices`, "a choice that accepts")];
  if (item.kind === "picture") return [];
  return [
    ...(item.quantity === undefined ? [fault(`${place}/quantity`, "what kind of value it is")] : []),
    ...(item.unit === undefined ? [fault(`${place}/unit`, "the unit of a bare number")] : []),
    ...(item.fromMark && item.quantity !== "length" ? [fault(`${place}/fromMark`, "a reading of kind length")] : []),
  ];
}

function oneOfFaults(sheet: ToleranceSheet, one: OneOf): readonly Refusal[] {
  const place = `sheet/oneOf/${one.id}`;
  const repeating = sheet.items.filter((item) => item.tags !== undefined && one.groups.some((group) => group.items.includes(item.id)));
  return [
    ...(one.groups.length < 2 || one.groups.some((group) => group.items.length === 0)
      ? [fault(`${place}/groups`, "two groups or more")]
      : []),
    ...repeating.map((item) => fault(`${place}/${item.id}`, "an item that no tag repeats")),
  ];
}

const tagSetFaults = ({ id, least, coverings }: TagSet): readonly Refusal[] =>
  least > 0 && coverings.length === 0 ? [fault(`sheet/tagSets/${id}/coverings`, "a covering that hides it")] : [];

/** Parts of a sheet that are well named and yet could never be met: too few items, kinds that do not fit, groups of tags. */
export const formFaults = (sheet: ToleranceSheet): readonly Refusal[] => [
  ...sheet.items.flatMap(itemFaults),
  ...sheet.checks.flatMap((check) => checkFaults(sheet, check)),
  ...sheet.oneOf.flatMap((one) => oneOfFaults(sheet, one)),
  ...sheet.tagSets.flatMap(tagSetFaults),
];
