import { certain, rectangular, type Uncertain, withSource } from "../doubt/index.ts";
import { fixedPerSi, inches } from "../units/index.ts";
import { type Evaporated, type LeakConditions, type LeakTestFault, type LevelReadings, leakTest } from "../water/index.ts";
import { designFigures } from "./design/index.ts";
import { type Context, type Evaluation, instancesOf, lacking, missingOf, readAll } from "./evaluation.ts";
import { expectedOf, sourceFor } from "./expected.ts";
import { figureValue } from "./figures.ts";
import { message } from "./finding.ts";
import { derived } from "./limits.ts";
import { happenedAt, type Live } from "./live.ts";
import { meaningOf } from "./meaning.ts";
import type { Reading } from "./measured.ts";
import type { ChoiceMeaning } from "./sheet.ts";

const MS_PER_SECOND = 1000;

const conditionsOf = (means: readonly ChoiceMeaning[]): LeakConditions => {
  const says = (meaning: ChoiceMeaning): boolean => means.includes(meaning);
  const pump = says("pump off") ? "off" : says("pump ran") ? "ran" : says("pump ran in part") ? "ran in part" : undefined;
  return {
    ...(says("make-up shut") ? { makeUpShut: true } : says("make-up open") ? { makeUpShut: false } : {}),
    ...(says("rain") ? { rain: true } : says("no rain") ? { rain: false } : {}),
    ...(pump && { pump }),
  };
};

const sentences: Readonly<Record<LeakTestFault, string>> = {
  "make-up not shut": "leak.make-up",
  "make-up not stated": "leak.not-said",
  rain: "leak.rain",
  "rain not stated": "leak.not-said",
  "pump not off": "leak.pump-not-off",
  "pump not running": "leak.pump-not-running",
  "pump not stated": "leak.not-said",
};

interface Pair {
  readonly levels?: LevelReadings;
  readonly readings: readonly Reading[];
  readonly missing: Evaluation;
}

/** The last reading of each of two items, water down from a mark. */
function pairOf(context: Context, ids: readonly string[]): Pair {
  const readings = readAll(context, ids);
  const [first, last] = ids.map((id) => readings.get(id)?.at(-1));
  const both = [first, last].flatMap((reading) => reading ?? []);
  const missing = lacking(
    missingOf(context, ids, readings),
    both.map(({ fact }) => fact),
  );
  return { readings: both, missing, ...(first && last ? { levels: { first: first.value, last: last.value } } : {}) };
}

/** A figure of the design, SI, with what it is known to on paper. */
function figureOf(context: Context, key: "evaporationPerDay" | "openWaterArea", kind: "length" | "area"): Uncertain | undefined {
  const value = figureValue(sourceFor(context.state, undefined), key, kind);
  if (value === undefined) return undefined;
  const si = value / fixedPerSi(kind);
  return withSource(certain(si), `figure:${key}`, rectangular((designFigures[key].doubt?.share ?? 0) * si));
}

/** Time between two readings, seconds: their instants as typed or entered. */
function between(first: Live, last: Live): Uncertain {
  const seconds = (happenedAt(last) - happenedAt(first)) / MS_PER_SECOND;
  return withSource(certain(seconds), "clocks", Math.max(first.doubt, last.doubt) / MS_PER_SECOND);
}

/** What a basin loses a day beyond what evaporates, m³, from the water's height first and last and the time between. */
export function lossADay(context: Context): Evaluation {
  const { check, state } = context;
  const level = pairOf(context, check.items);
  const [first, last] = level.readings.map(({ fact }) => fact);
  if (level.levels === undefined || first === undefined || last === undefined) return level.missing;
  const bucket = check.bucket === undefined ? undefined : pairOf(context, check.bucket);
  const conditions = instancesOf(context, check.conditions ?? []);
  const entries = [...level.readings, ...(bucket?.readings ?? [])].map(({ fact }) => fact);
  const means = meaningOf(state, conditions);
  if (means === undefined) return lacking(conditions, entries);

  const water = derived(expectedOf(state, undefined, "waterPerInch"));
  const evaporation = bucket?.levels ? undefined : figureOf(context, "evaporationPerDay", "length");
  const evaporated: Evaporated | undefined = bucket?.levels
    ? { by: "control bucket", level: bucket.levels }
    : evaporation && { by: "weather", depthPerDay: evaporation };
  const unknown = [...("value" in water ? [] : (water.unknown ?? [])), ...(evaporated === undefined ? ["evaporationPerDay"] : [])];
  if (!("value" in water) || evaporated === undefined) return { state: "lacking", missing: [], entries, unknown };

  const perInch = fixedPerSi("volume") * inches(1);
  const open = check.leak === "running" ? figureOf(context, "openWaterArea", "area") : undefined;
  const tested = leakTest({
    kind: check.leak ?? "basin, pump off",
    level: level.levels,
    duration: between(first, last),
    perDepth: withSource(certain(water.value / perInch), "design:water-per-depth", (water.doubt ?? 0) / perInch),
    ...(open && { evaporatingArea: open }),
    evaporated,
    conditions: conditionsOf(means),
  });
  // no time between the readings: the last one is taken again
  if (!tested.ok) return lacking(instancesOf(context, check.items.slice(1)), entries);
  if (tested.value.answer === "counts") return { state: "value", value: tested.value.lossPerDay, entries, leak: tested.value };
  const [fault = "rain not stated"] = tested.value.faults;
  return { state: "does not count", says: message(sentences[fault]), entries };
}
