import type { Uncertain } from "../doubt/index.ts";
import type { Evaporated } from "../water/index.ts";
import { designFigure } from "./design/index.ts";
import { type Context, instancesOf } from "./evaluation.ts";
import { sourceFor } from "./expected.ts";
import type { About } from "./fact.ts";
import type { Live } from "./live.ts";
import { aboutOf } from "./series.ts";
import { evaporationByWeather, overWholeDays } from "./test-weather.ts";

/** What evaporated in a test without a control bucket, or what it waits for; `says` is the key of its sentence. */
export type WithoutBucket =
  | { readonly state: "known"; readonly evaporated: Evaporated; readonly entries: readonly Live[] }
  | { readonly state: "waits"; readonly missing: readonly About[]; readonly unknown: readonly string[]; readonly says?: string }
  | { readonly state: "does not hold together"; readonly entries: readonly Live[] };

/**
 * What evaporated a day in a test without a control bucket: by its typed weather, else by the design's figure. Weather that somebody
 * began to type is waited for, and the design does not step in for it. `at`: the middle of the test, ms; `seconds`: how long it was.
 */
export function evaporatedWithoutBucket(context: Context, at: number, seconds: number): WithoutBucket {
  const { weather } = context.check;
  const over = (depthPerDay: Uncertain): Evaporated => ({ by: "weather", depthPerDay: overWholeDays(depthPerDay, seconds) });
  const typed = weather && evaporationByWeather(context, weather, at);
  if (typed?.state === "worked out") return { state: "known", evaporated: over(typed.depthPerDay), entries: typed.entries };
  if (typed?.state === "does not hold together") return typed;
  if (typed?.begun) {
    const { missing, unknown } = typed;
    return { state: "waits", missing, unknown, ...(missing.length === 0 ? { says: "leak.site-unknown" } : {}) };
  }
  const planned = designFigure(sourceFor(context.state, undefined), "evaporationPerDay");
  if (planned) return { state: "known", evaporated: over(planned), entries: [] };
  const unknown = ["evaporationPerDay"];
  if (weather === undefined) return { state: "waits", missing: [], unknown };
  const waits = instancesOf(context, [weather.highest, weather.lowest, weather.humidity, weather.wind, weather.sunshine]).map(aboutOf);
  return { state: "waits", missing: waits, unknown, says: "leak.no-evaporation" };
}
