/**
 * Branded SI quantities and the integers that are stored. Inside the core a length is `Metres`; what is hashed, stored,
 * sealed or compared is an integer in the fixed unit of its kind (see `fixedUnits`).
 */
declare const unit: unique symbol;
type Branded<U extends string> = number & { readonly [unit]: U };

export type Metres = Branded<"m">;
export type SquareMetres = Branded<"m2">;
export type CubicMetres = Branded<"m3">;
export type Seconds = Branded<"s">;
export type Micrometres = Branded<"um">;

export const metres = (n: number): Metres => n as Metres;
export const squareMetres = (n: number): SquareMetres => n as SquareMetres;
export const cubicMetres = (n: number): CubicMetres => n as CubicMetres;
export const seconds = (n: number): Seconds => n as Seconds;

/** Exact factors. International inch 0.0254 m (1959); US gallon 231 in³ = 3.785411784e-3 m³ (NIST SP 811 App. B). */
export const METRES_PER_INCH = 0.0254;
export const INCHES_PER_FOOT = 12;
export const CUBIC_METRES_PER_GALLON = 231 * 0.0254 * 0.0254 * 0.0254;

export const inches = (n: number): Metres => metres(n * METRES_PER_INCH);
export const feet = (n: number): Metres => metres(n * INCHES_PER_FOOT * METRES_PER_INCH);
export const toInches = (m: Metres): number => m / METRES_PER_INCH;
export const toGallons = (v: CubicMetres): number => v / CUBIC_METRES_PER_GALLON;

/** Nearest integer micrometre; half away from zero, so that a value and its mirror round alike. */
export const toMicrometres = (m: Metres): Micrometres => (Math.sign(m) * Math.round(Math.abs(m) * 1e6)) as Micrometres;
export const fromMicrometres = (n: number): Metres => metres(n / 1e6);

/** The kinds of value that a reading or a design figure can have, and the fixed unit of the stored integer. */
export const fixedUnits = {
  length: "um",
  area: "cm2",
  volume: "ml",
  flow: "ml/min",
  flowPerLength: "ml/min/m",
  velocity: "mm/s",
  angle: "udeg",
  radiation: "J/cm2",
  duration: "ms",
  instant: "ms",
  temperature: "mC",
  power: "mW",
  voltage: "mV",
  current: "mA",
  mass: "g",
  count: "1",
  ratio: "ppm",
} as const;
export type QuantityKind = keyof typeof fixedUnits;

const perSi: Readonly<Record<QuantityKind, number>> = {
  length: 1e6,
  area: 1e4,
  volume: 1e6,
  flow: 6e7,
  flowPerLength: 6e7,
  velocity: 1e3,
  angle: 1e6,
  radiation: 1e-4,
  duration: 1e3,
  instant: 1e3,
  temperature: 1e3,
  power: 1e3,
  voltage: 1e3,
  current: 1e3,
  mass: 1e3,
  count: 1,
  ratio: 1e6,
};

/** Fixed units in one SI unit of the kind (m, m², m³, m³/s, m²/s, m/s, degrees, J/m², s, °C, W, V, A, kg, 1). */
export const fixedPerSi = (kind: QuantityKind): number => perSi[kind];
