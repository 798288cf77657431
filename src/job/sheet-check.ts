import type { QuantityKind } from "../units/index.ts";
import type { FloatOccasion } from "../water/index.ts";
import type { Words } from "./words.ts";

/** `holds` can stop a covering, `asked` is missed when absent, `if you have it` and `open` never are. */
export type Weight = "holds" | "asked" | "if you have it" | "open";

/** 'common practice' (no source), 'own' (our choice), or a publication. */
export type Source = string;

export interface Weighted {
  readonly weight: Weight;
  /** With weight `holds`: the covering held, or `by tag`: the one that the tag names. */
  readonly holds?: string;
  readonly switches?: { readonly on?: readonly string[]; readonly off?: readonly string[] };
  readonly source?: Source;
  /** Only the customer can accept it as built when it is not as asked: he lives with it. */
  readonly customerAccepts?: boolean;
}

export const checkFunctions = [
  "single value",
  "out of level",
  "fourth place",
  "moved since",
  "steady",
  "level along a lip",
  "at least one of",
  "time passed since",
  "between two instants",
  "loss a day",
  "short of the socket",
  "flow as measured",
  "room for rain",
  "found by ties",
  "stone on the lid",
  "voltage drop",
] as const;
export type CheckFunction = (typeof checkFunctions)[number];

/**
 * A number in the fixed unit of the check's kind, or a named function of design, kit card and typed values, plus an offset.
 * `item`: as typed, the value; cure time, the can's own time, which goes before the company's table.
 * `items`: cure time, the session's temperature and the answers that say what was glued and how damp the air was; set time, the same
 * with the can's cure time; water left inside, the answers that say whether water stands outside.
 * `occasion`: water left inside, where it is the sheet and no answer that says what for.
 */
export type LimitFigure =
  | number
  | {
      readonly function: LimitFunction;
      readonly figure?: string;
      readonly item?: string;
      readonly items?: readonly string[];
      readonly occasion?: FloatOccasion;
      readonly offset?: number;
    };

export const limitFunctions = [
  "design figure",
  "rim below finished grade",
  "cord reach",
  "as typed",
  "set time",
  "cure time",
  "standard socket depth",
  "expected draw-down",
  "expected flow",
  "rain of a day",
  "water left inside",
] as const;
export type LimitFunction = (typeof limitFunctions)[number];

/** Named figures that are printed beside a verdict. */
export const checkCosts = ["water lost to tilt", "water to leave inside"] as const;

/** What a time is to have passed before, where no item's entry says so: the covering that is held, or a moment of the job. */
export const passedBefore = ["covering", "first running"] as const;

/** What a drawing of the record takes from a check's value. */
export const checkShows = ["depth of cover"] as const;

/** The two leak tests: what only the second loses leaves by falls and edges. */
export const leakTests = ["basin, pump off", "running"] as const;

/** One way of measuring the flow, by the readings that it takes: a volume and a time, a length and a time, or what a meter shows. */
export interface FlowWay {
  readonly by: "bin" | "basin going down" | "meter";
  readonly items: readonly string[];
}
export const flowWays = ["bin", "basin going down", "meter"] as const satisfies readonly FlowWay["by"][];

/** The weather of a test as it was typed, item by item; of the sun its hours or its radiation. */
export interface WeatherTyped {
  readonly highest: string;
  readonly lowest: string;
  readonly humidity: string;
  readonly wind: string;
  readonly sunshine: string;
  readonly radiation?: string;
}

export interface Check extends Weighted {
  readonly id: string;
  readonly step: string;
  readonly title: Words;
  readonly function: CheckFunction;
  /**
   * The items it reads. single value: mean of them. out of level, fourth place: four places in order around the rim.
   * moved since: places now. steady: two of them. level along a lip: the two gaps. time passed since: the instant.
   * between two instants: the first and the last. loss a day: water down from the rim mark, first and last.
   * short of the socket: witness mark to the socket's mouth. flow as measured: those of all its ways.
   * room for rain: from the water at rest to the place that it leaves by. found by ties: the ties of one point.
   * stone on the lid: depth of the layer, then length, width and height of the boulder; one not read is the design's.
   * voltage drop: the wire's run, one way.
   */
  readonly items: readonly string[];
  /**
   * single value: the mean of these is taken off. moved since: the same places before, in the same order.
   * short of the socket: the socket's depth.
   */
  readonly minus?: readonly string[];
  /** out of level: along = from places 1, 4 to 2, 3 (quarter points: 1 to 3); across = from 1, 2 to 4, 3 (2 to 4). */
  readonly way?: "along" | "across";
  readonly places?: "corners" | "quarter points";
  /** time passed since: the item whose entry must come after. steady: none. */
  readonly until?: string;
  /** time passed since, without `until`. A moment that came before the instant is none. */
  readonly before?: (typeof passedBefore)[number];
  /** between two instants: the step whose first entry must lie between them. */
  readonly begins?: string;
  /** steady: least time between the two, milliseconds. */
  readonly apart?: number;
  /** loss a day: which of the two tests it is. */
  readonly leak?: (typeof leakTests)[number];
  /** loss a day: the control bucket, first and last. Not read: the weather, then what the design says that evaporates a day. */
  readonly bucket?: readonly string[];
  /** loss a day: the weather of the test, from which it is worked out what evaporated. */
  readonly weather?: WeatherTyped;
  /** loss a day: the answers that say whether the test counts. room for rain: the place that the water leaves by. */
  readonly conditions?: readonly string[];
  /** flow as measured: the ways of measuring it. */
  readonly ways?: readonly FlowWay[];
  readonly kind: QuantityKind;
  readonly aim?: LimitFigure;
  readonly lower?: LimitFigure;
  readonly upper?: LimitFigure;
  readonly rule?: "guarded" | "simple acceptance";
  /** Nominal size of bought stock, micrometres: no limit may sit on it. */
  readonly stock?: number;
  /** A named figure printed beside the verdict. */
  readonly costs?: (typeof checkCosts)[number];
  /** Never a verdict on the work: printed beside the figure with who decides. */
  readonly asks?: "electrician";
  /** A drawing of the record takes its value. */
  readonly shows?: (typeof checkShows)[number];
  /** Why its limits are what they are, for whoever changes the sheet; not printed. */
  readonly reason?: Words;
}
