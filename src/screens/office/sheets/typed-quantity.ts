import type { Refusal } from "../../../outcome/index.ts";
import { readQuantity } from "../../../reading/index.ts";
import type { QuantityKind } from "../../../units/index.ts";

/** The unit of a bare number, by the company's units. */
const bare: Readonly<Record<"inch" | "metric", Readonly<Record<QuantityKind, string>>>> = {
  inch: {
    length: "in",
    area: "ft²",
    volume: "gal",
    flow: "gpm",
    flowPerLength: "gph/in",
    velocity: "ft/s",
    angle: "°",
    radiation: "MJ/m²",
    duration: "min",
    instant: "instant",
    temperature: "°F",
    power: "W",
    voltage: "V",
    current: "A",
    mass: "lb",
    count: "1",
    ratio: "%",
  },
  metric: {
    length: "mm",
    area: "m²",
    volume: "L",
    flow: "L/min",
    flowPerLength: "L/min/m",
    velocity: "m/s",
    angle: "°",
    radiation: "MJ/m²",
    duration: "min",
    instant: "instant",
    temperature: "°C",
    power: "W",
    voltage: "V",
    current: "A",
    mass: "kg",
    count: "1",
    ratio: "%",
  },
};

export type QuantityTyped =
  | { readonly is: "empty" }
  | { readonly is: "value"; readonly value: number }
  | { readonly is: "refused"; readonly refusal: Refusal };

/** A figure of the sheet as it was typed, in the fixed unit of its kind. */
export function quantityTyped(text: string, kind: QuantityKind, units: "inch" | "metric", place: string): QuantityTyped {
  if (text.trim() === "") return { is: "empty" };
  const read = readQuantity(text, { kind, unit: bare[units][kind], signed: true, place });
  return read.ok ? { is: "value", value: read.value.value } : { is: "refused", refusal: read.refusal };
}
