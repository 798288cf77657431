import { certain, type Uncertain } from "../../doubt/index.ts";
import { type BasinWater, basinWater, planArea, type UsableWater, usableWater } from "../../water/index.ts";
import { ifKnown, type Known, known, orAssume, orElse, statedOr, together, work } from "./known.ts";
import type { Stated } from "./stated.ts";
import type { DesignSwitches } from "./switches.ts";

const round = (stated: Stated): Known<Uncertain> =>
  work(stated.number("basinDiameter"), (diameter) => planArea({ kind: "round", diameter }));

const rectangle = (stated: Stated): Known<Uncertain> =>
  work(together({ length: stated.number("basinLength"), width: stated.number("basinWidth") }), ({ length, width }) =>
    planArea({ kind: "rectangle", length, width }),
  );

/** Plan of the basin, m²: by the shape that the design names, else by whichever sizes are there. */
export const basinPlan = (stated: Stated, { roundBasin }: DesignSwitches): Known<Uncertain> =>
  roundBasin ? orElse(round(stated), () => rectangle(stated)) : orElse(rectangle(stated), () => round(stated));

/** Water when full and per depth: the maker's rating before the sizes. */
export function basinFull(stated: Stated, switches: DesignSwitches): Known<BasinWater> {
  const depth = stated.number("basinDepth");
  const byRating = work(together({ volume: stated.number("basinVolume"), depth }), (of) => basinWater({ kind: "rating", ...of }));
  const bySizes = () =>
    work(
      together({
        area: basinPlan(stated, switches),
        depth,
        displacedShare: orAssume(stated.number("displacedShare"), "displacedShare", certain(0)),
      }),
      (of) => basinWater({ kind: "dimensions", ...of }),
    );
  // a rating without its depth asks for the depth, and so do the sizes
  return orElse(byRating, bySizes).known ? orElse(byRating, bySizes) : bySizes();
}

/** What of it can be pumped. A tilt that nobody measured counts as none; the intake's height is asked for. */
export function basinUsable(stated: Stated, switches: DesignSwitches): Known<UsableWater> {
  const parts = together({
    water: basinFull(stated, switches),
    intakeHeight: stated.number("intakeHeight"),
    outOfLevel: orElse(stated.number("outOfLevel"), () => known(certain(0))),
  });
  return work(parts, ({ water, intakeHeight, outOfLevel }) => usableWater(water, { intakeHeight, outOfLevel }));
}

export interface BasinSize {
  readonly mass: Uncertain;
  readonly area: Uncertain;
  readonly displacedShare?: Uncertain;
  readonly rimHeight?: Uncertain;
}

/** Underside to rim, m. */
export const basinHeight = (stated: Stated): Known<Uncertain> => statedOr(stated.number("basinHeight"), () => stated.number("basinDepth"));

/** The empty basin as it floats. */
export function emptyBasin(stated: Stated, switches: DesignSwitches): Known<BasinSize> {
  const rimHeight = ifKnown(basinHeight(stated));
  const displacedShare = ifKnown(stated.number("displacedShare"));
  const parts = together({ mass: stated.number("basinWeight"), area: basinPlan(stated, switches) });
  return work(parts, ({ mass, area }) => ({
    ok: true,
    value: { mass, area, ...(displacedShare && { displacedShare }), ...(rimHeight && { rimHeight }) },
  }));
}
