import { type QuantityKind, tradeUnits, type UnitSymbol } from "../units/index.ts";

/** How each unit may be typed, in English and Spanish. Closed: what is not here is refused by name. Compared without case. */
const spellings: Readonly<Record<UnitSymbol, string>> = {
  in: "in inch inches pulgada pulgadas pulg",
  ft: "ft feet foot pie pies",
  mm: "mm millimetre millimetres millimeter millimeters milímetro milímetros milimetro milimetros",
  cm: "cm centimetre centimetres centimeter centimeters centímetro centímetros centimetro centimetros",
  m: "m metre metres meter meters metro metros",
  "in²": "in² in2 sqin",
  "ft²": "ft² ft2 sqft",
  "cm²": "cm² cm2",
  "m²": "m² m2",
  gal: "gal gallon gallons galón galon galones",
  L: "l litre litres liter liters litro litros",
  ml: "ml",
  gpm: "gpm gal/min",
  gph: "gph gal/h gal/hr",
  "L/min": "l/min lpm",
  "L/h": "l/h lph",
  "L/s": "l/s lps",
  "m³/h": "m³/h m3/h",
  "gph/in": "gph/in gph/inch gal/h/in",
  "L/min/m": "l/min/m",
  "ft/s": "ft/s fps",
  "m/s": "m/s",
  mph: "mph mi/h",
  "km/h": "km/h kmh kph",
  "°": "° deg degree degrees grado grados",
  "MJ/m²": "mj/m² mj/m2",
  "kWh/m²": "kwh/m² kwh/m2",
  s: "s sec secs second seconds seg segundo segundos",
  min: "min mins minute minutes minuto minutos",
  h: "h hr hrs hour hours hora horas",
  d: "d day days día días dia dias",
  "°F": "°f f",
  "°C": "°c c",
  W: "w watt watts vatio vatios",
  kW: "kw",
  V: "v volt volts voltio voltios",
  A: "a amp amps ampere amperes amperio amperios",
  lb: "lb lbs pound pounds libra libras",
  kg: "kg kilo kilos",
  g: "g",
  "1": "1",
  "%": "%",
  ppm: "ppm",
};

const symbols = new Map<string, UnitSymbol>(
  (Object.keys(spellings) as UnitSymbol[]).flatMap((symbol) => spellings[symbol].split(" ").map((spelling) => [spelling, symbol] as const)),
);

/** The unit that a word or sign names, or nothing. `º` (the ordinal mark beside the degree sign on phones) counts as a degree. */
export const namedUnit = (text: string): UnitSymbol | undefined => symbols.get(text.normalize("NFC").toLowerCase().replace(/º/g, "°"));

export const unitKind = (symbol: UnitSymbol): QuantityKind => tradeUnits[symbol].kind;
