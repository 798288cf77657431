import { type Refusal, refuse } from "../outcome/index.ts";
import type { QuantityKind } from "../units/index.ts";
import type { Check, FlowWay, Item, WeatherTyped } from "./sheet.ts";

const fault = (place: string, wanted: string): Refusal => refuse("sheet-shape", place, { wanted }).refusal;

/** What each way of measuring the flow reads: one of these sets of kinds, each kind once. */
const flowReads: Readonly<Record<FlowWay["by"], readonly (readonly QuantityKind[])[]>> = {
  bin: [["duration", "volume"]],
  "basin going down": [["duration", "length"]],
  meter: [["flow"], ["duration", "volume"]],
};

/** What each figure of typed weather is read in. */
const weatherReads: Readonly<Record<keyof WeatherTyped, QuantityKind>> = {
  highest: "temperature",
  lowest: "temperature",
  humidity: "ratio",
  wind: "velocity",
  sunshine: "duration",
  radiation: "radiation",
};

type ItemNamed = (id: string) => Item | undefined;

function flowFaults({ kind, items, ways = [] }: Check, place: string, itemOf: ItemNamed): readonly Refusal[] {
  const wayFaults = ways.flatMap(({ by, items: read }, i) => {
    const kinds = read.map((id) => itemOf(id)?.quantity ?? "").sort();
    const fits = flowReads[by].some((wanted) => wanted.join() === kinds.join()) && read.every((id) => items.includes(id));
    return fits
      ? []
      : [fault(`${place}/ways/${i}`, `readings of kind ${flowReads[by].map((wanted) => wanted.join(" and ")).join(", or ")}`)];
  });
  return [
    ...(kind === "flow" ? [] : [fault(`${place}/kind`, "flow")]),
    ...(ways.length > 0 ? wayFaults : [fault(`${place}/ways`, "the ways of measuring it")]),
  ];
}

const rainFaults = ({ kind, conditions = [] }: Check, place: string): readonly Refusal[] => [
  ...(kind === "length" ? [] : [fault(`${place}/kind`, "length")]),
  ...(conditions.length > 0 ? [] : [fault(`${place}/conditions`, "the answer on the place that the water leaves by")]),
];

function weatherFaults(weather: WeatherTyped, place: string, itemOf: ItemNamed): readonly Refusal[] {
  return (Object.keys(weatherReads) as (keyof WeatherTyped)[]).flatMap((role) => {
    const item = itemOf(weather[role] ?? "");
    return item === undefined || item.quantity === weatherReads[role]
      ? []
      : [fault(`${place}/weather/${role}`, `a reading of kind ${weatherReads[role]}`)];
  });
}

/** Forms of what a check on flow, on room for rain or on a loss a day is read from, beyond its items. */
export const waterFaults = (check: Check, place: string, itemOf: ItemNamed): readonly Refusal[] => [
  ...(check.function === "flow as measured" ? flowFaults(check, place, itemOf) : []),
  ...(check.function === "room for rain" ? rainFaults(check, place) : []),
  ...(check.weather === undefined ? [] : weatherFaults(check.weather, place, itemOf)),
];
