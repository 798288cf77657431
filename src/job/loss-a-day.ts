import { certain, type Uncertain, withSource } from "../doubt/index.ts";
import { type LeakConditions, type LeakTestFault, type LevelReadings, leakTest, leakTestFaults } from "../water/index.ts";
import { designFigure } from "./design/index.ts";
import { type Context, type Evaluation, instancesOf, lacking, missingOf, readAll } from "./evaluation.ts";
import { evaporatedWithoutBucket, type WithoutBucket } from "./evaporated.ts";
import { sourceFor } from "./expected.ts";
import { message } from "./finding.ts";
import { happenedAt, type Live } from "./live.ts";
import { meaningOf } from "./meaning.ts";
import type { Reading } from "./measured.ts";
import type { ChoiceMeaning } from "./sheet.ts";
import { waterPerDepth } from "./water-per-depth.ts";

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

/** Time between two readings, seconds: their instants as typed or entered. */
function between(first: Live, last: Live): Uncertain {
  const seconds = (happenedAt(last) - happenedAt(first)) / MS_PER_SECOND;
  return withSource(certain(seconds), "clocks", Math.max(first.doubt, last.doubt) / MS_PER_SECOND);
}

const both = (a: readonly Live[], b: readonly Live[]): readonly Live[] => [...a, ...b];

/** What evaporated: in the bucket where it was read first and last, else by the weather of the test or the design. */
function evaporatedIn(context: Context, levels: LevelReadings | undefined, [first, last]: readonly [Live, Live]): WithoutBucket {
  if (levels) return { state: "known", evaporated: { by: "control bucket", level: levels }, entries: [] };
  const [from, to] = [happenedAt(first), happenedAt(last)];
  return evaporatedWithoutBucket(context, (from + to) / 2, Math.max(0, (to - from) / MS_PER_SECOND));
}

/** What a basin loses a day beyond what evaporates, m³, from the water's height first and last and the time between. */
export function lossADay(context: Context): Evaluation {
  const { check, state } = context;
  const kind = check.leak ?? "basin, pump off";
  const level = pairOf(context, check.items);
  const [first, last] = level.readings.map(({ fact }) => fact);
  if (level.levels === undefined || first === undefined || last === undefined) return level.missing;
  const bucket = check.bucket === undefined ? undefined : pairOf(context, check.bucket);
  const answers = instancesOf(context, check.conditions ?? []);
  const read = [...level.readings, ...(bucket?.readings ?? [])].map(({ fact }) => fact);
  const means = meaningOf(state, answers);
  if (means === undefined) return lacking(answers, read);
  const conditions = conditionsOf(means);
  const [fault] = leakTestFaults(kind, conditions);
  if (fault) return { state: "does not count", says: message(sentences[fault]), entries: read };

  const water = waterPerDepth(state);
  const found = evaporatedIn(context, bucket?.levels, [first, last]);
  if (found.state === "does not hold together")
    return { state: "does not count", says: message("leak.weather-odd"), entries: both(read, found.entries) };
  if ("unknown" in water || found.state === "waits") {
    const { missing = [], unknown = [], says } = found.state === "waits" ? found : {};
    const owed = [...("unknown" in water ? water.unknown : []), ...unknown];
    return { state: "lacking", missing, entries: read, unknown: owed, ...(says === undefined ? {} : { says }) };
  }
  const entries = both(read, found.entries);
  const open = kind === "running" ? designFigure(sourceFor(state, undefined), "openWaterArea") : undefined;
  // the weather takes from falls and pools too: without their area what they lose would pass for a leak
  if (kind === "running" && found.evaporated.by === "weather" && open === undefined)
    return { state: "lacking", missing: [], entries, unknown: ["openWaterArea"], says: "leak.area-unknown" };
  const tested = leakTest({
    kind,
    level: level.levels,
    duration: between(first, last),
    perDepth: water.value,
    ...(open && { evaporatingArea: open }),
    evaporated: found.evaporated,
    conditions,
  });
  // no time between the readings: the last one is taken again
  if (!tested.ok || tested.value.answer !== "counts") return lacking(instancesOf(context, check.items.slice(1)), entries);
  return { state: "value", value: tested.value.lossPerDay, entries, leak: tested.value };
}
