import { standardUncertainty } from "../doubt/index.ts";
import type { Json } from "../ledger/index.ts";
import { type Refusal, refuse } from "../outcome/index.ts";
import { canBeDecided } from "../tolerance/index.ts";
import { fixedPerSi } from "../units/index.ts";
import { evaluate, tagSetOf } from "./evaluate.ts";
import type { Entry } from "./fact.ts";
import { liveFacts } from "./live.ts";
import type { Check, Item, LimitFigure, ToleranceSheet } from "./sheet.ts";
import type { JobState, SetUp } from "./state.ts";

/** Text of a reading with the resolution that the instrument is usually read to. */
function usualText(resolution: number): string {
  const denominator = [2, 4, 8, 16, 32, 64].find((d) => Math.round(25_400 / d) === resolution);
  if (denominator !== undefined) return `10 1/${denominator} in`;
  if (resolution >= 25_400) return "10 in";
  return resolution < 1000 ? "254.0 mm" : "254 mm";
}

const TAG = "T";

/** A job in which each item that the check reads has been read once, as the sheet says it is to be read. */
function specimen(sheet: ToleranceSheet, check: Check): JobState {
  const set = tagSetOf(sheet.items, check);
  const later = new Set(check.function === "moved since" ? check.minus : []);
  const read = sheet.items.filter((item) => [...check.items, ...(check.minus ?? [])].includes(item.id));
  const marks = read.some((item) => item.inSetUp) ? sheet.items.filter((item) => item.heightMark) : [];
  const setUps = new Map<string, SetUp>();
  const entries: Entry[] = [];
  const setUpFor = (item: Item, name: string): string => {
    const instrument = sheet.instruments.find((i) => i.id === item.instrument);
    setUps.set(name, {
      id: name,
      position: 0,
      instrument: item.instrument ?? "",
      ...(instrument?.receiver ? { receiver: instrument.receiver } : {}),
    });
    return name;
  };
  const enter = (item: Item, setUp: string | undefined, id: string): void => {
    const instrument = sheet.instruments.find((i) => i.id === item.instrument);
    const what: { [key: string]: Json } = {
      item: item.id,
      typed: usualText(instrument?.resolution ?? 1588),
      unit: item.unit?.inch ?? "in",
    };
    if (item.tags !== undefined && item.tags === set) what.tag = TAG;
    if (setUp !== undefined) what.setUp = setUp;
    entries.push({ id, digest: id, kind: "reading-taken", author: { person: "", phone: "" }, run: entries.length, made: 0, what });
  };
  for (const item of read) enter(item, item.inSetUp ? setUpFor(item, later.has(item.id) ? "before" : "now") : undefined, item.id);
  for (const name of setUps.keys()) {
    for (const mark of marks) {
      enter(mark, name, `${mark.id} ${name} first`);
      enter(mark, name, `${mark.id} ${name} last`);
    }
  }
  const facts = liveFacts(entries);
  const byItem = new Map(sheet.items.map((item) => [item.id, facts.filter((f) => f.what.item === item.id)]));
  return {
    ledger: { entries, versions: {} },
    facts,
    byItem,
    sheet,
    kitCards: [],
    tags: set === undefined ? [] : [{ set, tag: TAG, hiddenBy: "", entry: "" }],
    setUps,
    cuts: [],
  };
}

/** Standard uncertainty with which this check is usually read, in the fixed unit of its kind. */
export function usualUncertainty(sheet: ToleranceSheet, check: Check): number | undefined {
  const evaluation = evaluate(specimen(sheet, check), check, tagSetOf(sheet.items, check) === undefined ? undefined : TAG);
  return evaluation.state === "value" ? standardUncertainty(evaluation.value) * fixedPerSi(check.kind) : undefined;
}

/** A limit as far as the sheet alone knows it: a number, or its offset from the figure that it names. */
const onPaper = (limit: LimitFigure | undefined): { readonly base: string; readonly value: number } | undefined =>
  limit === undefined
    ? undefined
    : typeof limit === "number"
      ? { base: "", value: limit }
      : { base: `${limit.function} ${limit.figure ?? ""} ${limit.item ?? ""}`, value: limit.offset ?? 0 };

/** Functions whose limit is their own doubt, a clock or a count: no work could be too good to be decided. */
const withoutRoom: ReadonlySet<string> = new Set(["steady", "at least one of", "time passed since"]);

function faultsOf(sheet: ToleranceSheet, check: Check): readonly Refusal[] {
  const place = `sheet/checks/${check.id}`;
  const [aim, lower, upper] = [onPaper(check.aim), onPaper(check.lower), onPaper(check.upper)];
  const onStock = [lower, upper].some((limit) => check.stock !== undefined && limit?.base === "" && limit.value === check.stock);
  const stock = onStock ? [refuse("sheet-limit-on-nominal", place, { size: check.stock ?? 0 }).refusal] : [];
  if (lower && upper && lower.base === upper.base && lower.value > upper.value)
    return [...stock, refuse("limits-crossed", place, { lower: lower.value, upper: upper.value }).refusal];
  if (withoutRoom.has(check.function)) return stock;
  const limits = [lower, upper].filter((limit) => limit !== undefined);
  if (limits.length === 0) return stock;
  if (aim === undefined) return check.weight === "holds" ? [...stock, refuse("sheet-limit-without-aim", place).refusal] : stock;
  if (limits.some((limit) => limit.base !== aim.base)) return stock;
  const u = usualUncertainty(sheet, check);
  if (u === undefined) return [...stock, refuse("sheet-limit-undecidable", place, { room: 0, needed: 0 }).refusal];
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
