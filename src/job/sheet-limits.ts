import { standardUncertainty } from "../doubt/index.ts";
import type { Json } from "../ledger/index.ts";
import { type Refusal, refuse } from "../outcome/index.ts";
import { canBeDecided } from "../tolerance/index.ts";
import { fixedPerSi } from "../units/index.ts";
import { evaluate } from "./evaluate.ts";
import type { Entry, FactKind } from "./fact.ts";
import { type Check, type CheckFunction, type Instrument, type Item, type LimitFigure, type ToleranceSheet, tagSetOf } from "./sheet.ts";
import { type JobState, jobState } from "./state.ts";

/** Text of a length with the resolution that the instrument is usually read to. */
function usualLength(resolution: number): string {
  const denominator = [2, 4, 8, 16, 32, 64].find((d) => Math.round(25_400 / d) === resolution);
  if (denominator !== undefined) return `10 1/${denominator} in`;
  if (resolution >= 25_400) return "10 in";
  return resolution < 1000 ? "254.0 mm" : "254 mm";
}

const TAG = "T";

/** A job in which each item that the check reads has been read once, as the sheet says it is to be read. */
function specimen(sheet: ToleranceSheet, check: Check): JobState {
  const entries: Entry[] = [];
  const enter = (kind: FactKind, what: { readonly [key: string]: Json }): string => {
    const id = `${entries.length}`;
    entries.push({ id, digest: id, kind, author: { person: "", phone: "" }, run: entries.length, made: 0, what });
    return id;
  };
  const instrumentOf = (item: Item): Instrument | undefined => sheet.instruments.find((i) => i.id === item.instrument);
  const setUps = new Map<string, string>();
  const setUpFor = (item: Item, name: string): string => {
    const receiver = instrumentOf(item)?.receiver;
    const known = setUps.get(name) ?? enter("set-up-made", { instrument: item.instrument ?? "", ...(receiver ? { receiver } : {}) });
    setUps.set(name, known);
    return known;
  };
  const read = (item: Item, setUp?: string): void => {
    const isLength = item.quantity === undefined || item.quantity === "length";
    enter("reading-taken", {
      item: item.id,
      typed: isLength ? usualLength(instrumentOf(item)?.resolution ?? 1588) : "10",
      unit: isLength ? "in" : (item.unit?.inch ?? ""),
      ...(item.tags === undefined ? {} : { tag: TAG }),
      ...(setUp === undefined ? {} : { setUp }),
    });
  };
  enter("version-taken-over", { thing: "sheet", name: sheet.id, number: sheet.version, digest: "sheet" });
  const set = tagSetOf(sheet.items, check);
  if (set !== undefined) enter("tag-named", { set, tag: TAG, hiddenBy: "" });
  const earlier = new Set(check.function === "moved since" ? check.minus : []);
  const items = sheet.items.filter((item) => [...check.items, ...(check.minus ?? [])].includes(item.id));
  for (const item of items) read(item, item.inSetUp ? setUpFor(item, earlier.has(item.id) ? "before" : "now") : undefined);
  for (const setUp of setUps.values()) {
    for (const mark of sheet.items.filter((item) => item.heightMark)) for (const _ of ["first", "last"]) read(mark, setUp);
  }
  return jobState({ entries, versions: { sheet: sheet as unknown as Json } });
}

/** Standard uncertainty with which this check is usually read, in the fixed unit of its kind. */
export function usualUncertainty(sheet: ToleranceSheet, check: Check): number | undefined {
  const evaluation = evaluate(specimen(sheet, check), check, tagSetOf(sheet.items, check) === undefined ? undefined : TAG);
  return evaluation.state === "value" ? standardUncertainty(evaluation.value) * fixedPerSi(check.kind) : undefined;
}

/** A limit as far as the sheet alone knows it: a number, or its offset from the figure that it names. */
export const onPaper = (limit: LimitFigure | undefined): { readonly base: string; readonly value: number } | undefined =>
  limit === undefined
    ? undefined
    : typeof limit === "number"
      ? { base: "", value: limit }
      : { base: `${limit.function} ${limit.figure ?? ""} ${limit.item ?? ""}`, value: limit.offset ?? 0 };

/** Functions whose limit is their own doubt, a clock or a count: no work could be too good to be decided. */
export const withoutRoom: ReadonlySet<CheckFunction> = new Set([
  "steady",
  "at least one of",
  "time passed since",
  "between two instants",
  "loss a day",
  "flow as measured",
  "room for rain",
  "found by ties",
  "stone on the lid",
  "voltage drop",
]);

function faultsOf(sheet: ToleranceSheet, check: Check): readonly Refusal[] {
  const place = `sheet/checks/${check.id}`;
  const [aim, lower, upper] = [onPaper(check.aim), onPaper(check.lower), onPaper(check.upper)];
  const onStock = [lower, upper].some((limit) => check.stock !== undefined && limit?.base === "" && limit.value === check.stock);
  const stock = onStock ? [refuse("sheet-limit-on-nominal", place, { size: check.stock ?? 0 }).refusal] : [];
  if (lower && upper && lower.base === upper.base && lower.value > upper.value)
    return [...stock, refuse("limits-crossed", place, { lower: lower.value, upper: upper.value }).refusal];
  if (withoutRoom.has(check.function)) return stock;
  const limits = [lower, upper].filter((limit) => limit !== undefined);
  if (limits.length === 0) return [...stock, refuse("limits-missing", place).refusal];
  if (aim === undefined) return check.weight === "holds" ? [...stock, refuse("sheet-limit-without-aim", place).refusal] : stock;
  if (limits.some((limit) => limit.base !== aim.base)) return stock;
  const u = usualUncertainty(sheet, check);
  if (u === undefined) return [...stock, refuse("sheet-limit-undecidable", place).refusal];
  const decided = canBeDecided({
    aim: aim.value,
    ...(lower ? { lower: lower.value } : {}),
    ...(upper ? { upper: upper.value } : {}),
    u,
    rule: check.rule === "simple acceptance" ? "simple" : "guarded",
  });
  if (!decided.ok) return [...stock, { ...decided.refusal, place }];
  if (decided.value.decidable) return stock;
  const { room, needed } = decided.value;
  return [...stock, refuse("sheet-limit-undecidable", place, { room: Math.round(room), needed: Math.ceil(needed) }).refusal];
}

/** Limits that are crossed, that nothing aims at, that honest work could not satisfy, or that sit on a bought size. */
export const limitFaults = (sheet: ToleranceSheet): readonly Refusal[] => sheet.checks.flatMap((check) => faultsOf(sheet, check));
