import { expanded, type Uncertain, unfit } from "../doubt/index.ts";
import { type Outcome, ok, refuse } from "../outcome/index.ts";
import { type CementTable, type CementTableName, type CureBlock, cementTables, DEFAULT_CEMENT_TABLE } from "./cement-tables.ts";
import { nominalInches, type PipeSize } from "./pipe-sizes.ts";

/** What was glued. The tables are for rigid PVC; every other joint takes the time from its own can. */
export type JointKind = "rigid PVC" | "flexible PVC" | "ABS to PVC transition";

/** Share of relative humidity, or what somebody tapped. Not known counts as humid. */
export type Humidity = number | "humid" | "dry" | "not known";

/** Times read from the can, milliseconds, typed once. */
export interface CanTimes {
  readonly set: number;
  readonly cure: number;
}

export interface GlueSession {
  readonly kind: JointKind;
  readonly size: PipeSize;
  /** Coldest of air and pipe since the first joint, °C. */
  readonly coldest: Uncertain;
  readonly humidity: Humidity;
  /** Working pressure, Pa; a buried basin's line stands under the head of the falls only. Lowest class where absent. */
  readonly pressure?: number;
  readonly table?: CementTableName;
  readonly can?: CanTimes;
}

export interface JointTimes {
  /** Milliseconds from the last joint until it may be handled and filled around. */
  readonly set: number;
  /** Milliseconds from the last joint until water. */
  readonly cure: number;
  readonly basis: { readonly kind: "can" } | { readonly kind: "table"; readonly table: CementTableName; readonly source: string };
  /** The humid half was added. */
  readonly humid: boolean;
  /** The doubt of the temperature reaches into a colder band, and that band was taken. */
  readonly colderBand: boolean;
  /** The table prints no set time, so the cure time stands for it. */
  readonly setIsCure: boolean;
}

const PASCALS_PER_PSI = 6894.757293168;
/** A stored thousandth of a °C is 0.0018 °F: a temperature typed as 40 °F must stay on the bound between two bands. */
const ON_THE_BOUND = 0.001;

const fahrenheit = (celsius: number): number => celsius * 1.8 + 32;

/** On the bound of two bands the colder one counts. */
const bandAt = (table: CementTable, coldest: number): number => {
  const last = table.bands.length - 1;
  if (coldest > (table.bands[0]?.to ?? Number.NaN) + ON_THE_BOUND) return -1;
  if (coldest < (table.bands[last]?.from ?? Number.NaN) - ON_THE_BOUND) return -1;
  const found = table.bands.findIndex(({ from }) => coldest > from + ON_THE_BOUND);
  return found === -1 ? last : found;
};

/** A size between two ranges counts to the larger. */
const sizeRange = (table: CementTable, size: number): number => table.sizes.findIndex(({ to }) => size <= to);

const blockFor = (table: CementTable, range: number, psi: number): CureBlock | undefined =>
  table.cure.find(({ upToPsi }) => psi <= (upToPsi[range] ?? 0));

const isHumid = (humidity: Humidity, above: number): boolean => (typeof humidity === "number" ? humidity > above : humidity !== "dry");

function fromTable(session: GlueSession, name: CementTableName): Outcome<JointTimes> {
  const table: CementTable = cementTables[name];
  const { coldest, humidity, size, pressure = 0 } = session;
  const range = sizeRange(table, nominalInches[size]);
  if (range === -1) return refuse("pipe-size-unknown", "cure/size", { found: size });
  const typed = bandAt(table, fahrenheit(coldest.value));
  if (typed === -1) return refuse("cure-temperature-outside", "cure/coldest", { milliCelsius: Math.round(coldest.value * 1000) });
  const lower = bandAt(table, fahrenheit(coldest.value - expanded(coldest)));
  const band = lower === -1 ? table.bands.length - 1 : lower;
  const block = blockFor(table, range, pressure / PASCALS_PER_PSI);
  const cureMinutes = block?.minutes[band]?.[range];
  if (cureMinutes === undefined) return refuse("cure-pressure-outside", "cure/pressure", { pascals: Math.round(pressure) });
  const humid = isHumid(humidity, table.humidAbove);
  const { numerator, denominator } = humid ? table.humidFactor : { numerator: 1, denominator: 1 };
  const milliseconds = (minutes: number): number => (minutes * 60_000 * numerator) / denominator;
  const setMinutes = table.set?.[band]?.[range];
  return ok({
    set: milliseconds(setMinutes ?? cureMinutes),
    cure: milliseconds(cureMinutes),
    basis: { kind: "table", table: name, source: table.source },
    humid,
    colderBand: band !== typed,
    setIsCure: setMinutes === undefined,
  });
}

function fromCan(can: CanTimes): Outcome<JointTimes> {
  const bad = unfit("cure/can", "positive", { set: can.set, cure: can.cure });
  if (bad) return bad;
  if (can.cure < can.set) return refuse("cure-before-set", "cure/can");
  const whole = { set: Math.ceil(can.set), cure: Math.ceil(can.cure) };
  return ok({ ...whole, basis: { kind: "can" }, humid: false, colderBand: false, setIsCure: false });
}

/**
 * How long a glue session takes to set and to cure. Times from the can rule wherever they were typed, taken as they stand (the can
 * says itself what cold and damp do). Otherwise the company's table: by size, by the coldest temperature less its doubt, by
 * pressure, half as much again when humid. Only + − × ÷ and a square root. Refuses pipe that no table covers without a can, a
 * temperature, size or pressure outside the table, and figures that are not finite or negative.
 */
export function jointTimes(session: GlueSession): Outcome<JointTimes> {
  const { kind, coldest, humidity, pressure = 0, table = DEFAULT_CEMENT_TABLE, can } = session;
  const bad =
    unfit("cure", "finite", { coldest }) ?? unfit("cure", "not negative", { pressure, ...(typeof humidity === "number" && { humidity }) });
  if (bad) return bad;
  if (can !== undefined) return fromCan(can);
  return kind === "rigid PVC" ? fromTable(session, table) : refuse("cure-time-unknown", "cure/kind", { kind });
}
