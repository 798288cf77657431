import { type Outcome, ok, refuse } from "../outcome/index.ts";
import { inches } from "../units/index.ts";
import { type Cautioned, cautioned } from "./caution.ts";

export interface PublishedCover {
  /** Key of what lies in the ground, for the dictionary. */
  readonly wiring:
    | "direct-burial-cable"
    | "rigid-metal-conduit"
    | "plastic-conduit"
    | "branch-120-volt-20-ampere-ground-fault"
    | "low-voltage-lighting";
  /** Metres, from the top of cable or conduit to finished grade. */
  readonly cover: number;
  readonly source: string;
  readonly seen: "quoted" | "from memory";
}

/**
 * Least cover, US National Electrical Code table 300.5, 0 to 1000 V, row 'all other locations', as quoted. Under drives, slabs and
 * buildings other rows hold that were not seen. Sources in circulation contradict each other; local code decides.
 */
export const publishedCovers: readonly PublishedCover[] = (
  [
    ["direct-burial-cable", 24],
    ["rigid-metal-conduit", 6],
    ["plastic-conduit", 18],
    ["branch-120-volt-20-ampere-ground-fault", 12],
    ["low-voltage-lighting", 6],
  ] as const
).map(([wiring, depth]) => ({
  wiring,
  cover: inches(depth),
  source: "US National Electrical Code table 300.5, all other locations",
  seen: "quoted",
}));

export interface CoverBeside extends Cautioned {
  /** The sheet's own figure, metres, where it has one. */
  readonly own?: number;
  /** Published figures to print beside it. */
  readonly published: readonly PublishedCover[];
}

/** Published depths beside the tolerance sheet's own figure, for print; nothing is compared. Refuses a figure that is not above zero. */
export function coverDepthFigures(own?: number): Outcome<CoverBeside> {
  if (own === undefined) return ok(cautioned({ published: publishedCovers }));
  if (!Number.isFinite(own)) return refuse("number-not-finite", "power/cover");
  if (own <= 0) return refuse("number-not-positive", "power/cover");
  return ok(cautioned({ own, published: publishedCovers }));
}
