import type { Uncertain } from "../../doubt/index.ts";
import { boulderWeight, type StoneAgainstLoad, stoneAgainstLoad } from "../../water/index.ts";
import type { FigureSource } from "../figures.ts";
import { basinPlan } from "./basin-figures.ts";
import { andThen, fromOutcome, ifKnown, type Known, known, pick, statedOr, together, work } from "./known.ts";
import { type Stated, statedBy } from "./stated.ts";
import type { DesignSwitches } from "./switches.ts";
import type { Instead } from "./vocabulary.ts";

const boulderSizes = (stated: Stated) =>
  together({ length: stated.number("boulderLength"), width: stated.number("boulderWidth"), height: stated.number("boulderHeight") });

/** Weight of the one boulder; the figure of the lifting caution. */
export const boulder = (stated: Stated): Known<Uncertain> => work(boulderSizes(stated), boulderWeight);

/** Plan of the stone, m²: as stated, else the basin's. */
export const stoneArea = (stated: Stated, switches: DesignSwitches): Known<Uncertain> =>
  statedOr(stated.number("stoneArea"), () => andThen(basinPlan(stated, switches), (area) => known(area, ["stoneArea"])));

/** Stone on the lid against the load that its kit card states. No load stated: ask the maker. */
export function stone(stated: Stated, switches: DesignSwitches): Known<StoneAgainstLoad> {
  const layer = together({ depth: stated.number("stoneDepth"), area: stoneArea(stated, switches) });
  const one = ifKnown(boulderSizes(stated));
  const load = ifKnown(stated.number("lidLoad"));
  return andThen(
    pick(layer, (of) => ({ layers: [of], boulders: one === undefined ? [] : [one] })),
    (on) => fromOutcome(stoneAgainstLoad(on, load === undefined ? undefined : { kind: "in all", mass: load })),
  );
}

/** The same with what was measured in the place of the design's figures. */
export const stoneOnLid = (source: FigureSource, switches: DesignSwitches, instead: Instead): Known<StoneAgainstLoad> =>
  stone(statedBy(source, instead), switches);
