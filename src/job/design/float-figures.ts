import { add, certain, product, quotient, rectangular, scale, subtract, type Uncertain, withSource } from "../../doubt/index.ts";
import { floatOn, type Lift, liftDepth, type OccasionAnswer, type OutsideFacts } from "../../water/index.ts";
import { basinHeight, emptyBasin } from "./basin-figures.ts";
import { andThen, type Known, known, orElse, pick, statedOr, together, work } from "./known.ts";
import type { Stated } from "./stated.ts";
import type { DesignSwitches } from "./switches.ts";
import { WORKING_ROOM, WORKING_ROOM_HALF_WIDTH } from "./vocabulary.ts";

/** Depth outside that lifts the empty basin. */
export const lift = (stated: Stated, switches: DesignSwitches): Known<Lift> =>
  work(emptyBasin(stated, switches), (basin) => liftDepth(basin));

const workingRoom = withSource(certain(2 * WORKING_ROOM), "own:working-room", 2 * rectangular(WORKING_ROOM_HALF_WIDTH));

/** Plan of the hole, m²: as stated, else the basin with room to tamp all round. */
export function holeArea(stated: Stated, switches: DesignSwitches): Known<Uncertain> {
  const wider = together({ length: stated.number("basinLength"), width: stated.number("basinWidth") });
  const rectangle = () => pick(wider, ({ length, width }) => product(add(length, workingRoom), add(width, workingRoom)));
  const round = () =>
    pick(stated.number("basinDiameter"), (diameter) => {
      const across = add(diameter, workingRoom);
      return scale(product(across, across), Math.PI / 4);
    });
  const bySizes = switches.roundBasin ? orElse(round(), rectangle) : orElse(rectangle(), round);
  return statedOr(stated.number("holeArea"), () => andThen(bySizes, (area) => known(area, ["holeArea"])));
}

/** Rain in the open hole: what is expected, what drains in (the hole alone where nothing is said), and the hole. */
export function rainFacts(stated: Stated, switches: DesignSwitches): Known<NonNullable<OutsideFacts["rain"]>> {
  const hole = holeArea(stated, switches);
  const catchArea = statedOr(stated.number("catchArea"), () => andThen(hole, (area) => known(area, ["catchArea"])));
  return together({ depth: stated.number("rainExpected"), catchArea, holeArea: hole });
}

/** Rain that gathers in the hole until the empty basin lifts, m. */
export function rainThatFloats(stated: Stated, switches: DesignSwitches): Known<Uncertain> {
  const hole = holeArea(stated, switches);
  const catchArea = statedOr(stated.number("catchArea"), () => andThen(hole, (area) => known(area, ["catchArea"])));
  const parts = together({ hole, catchArea, basin: emptyBasin(stated, switches), lifts: lift(stated, switches) });
  return pick(parts, ({ hole: area, catchArea: drained, basin, lifts }) =>
    quotient(product(lifts.liftDepth, subtract(area, basin.area)), drained),
  );
}

type Told = Exclude<OccasionAnswer, { answer: "not known" }>;

const told = (stated: Stated, switches: DesignSwitches, occasion: Told["occasion"], facts: Known<OutsideFacts>): Known<Told> =>
  andThen(together({ basin: emptyBasin(stated, switches), facts }), ({ basin, facts: outside }) =>
    andThen(
      work(known(basin), (of) => floatOn(occasion, of, outside)),
      (answer) => (answer.answer === "not known" ? { known: false, needs: ["basinDepth"], assumes: [] } : known(answer)),
    ),
  );

/** Ground water above the basin's underside, m: not known, up to the rim. */
function groundWater(stated: Stated): Known<OutsideFacts> {
  const parts = together({
    depth: stated.number("groundwaterDepth"),
    rim: stated.number("rimBelowGrade"),
    height: basinHeight(stated),
  });
  const above = pick(parts, ({ depth, rim, height }) => {
    const water = subtract(add(height, rim), depth);
    return { groundWater: water.value > 0 ? water : certain(0) };
  });
  return statedOr<OutsideFacts>(above, () => pick(basinHeight(stated), () => ({})));
}

/** How much water to leave inside on each of the four occasions. */
export const leaveOn = (stated: Stated, switches: DesignSwitches) => ({
  seen: told(
    stated,
    switches,
    "water seen in the hole",
    pick(stated.number("waterInHole"), (waterSeen) => ({ waterSeen })),
  ),
  rain: told(
    stated,
    switches,
    "rain before backfill",
    pick(rainFacts(stated, switches), (rain) => ({ rain })),
  ),
  washingIn: told(
    stated,
    switches,
    "washing in",
    pick(stated.number("layerTop"), (layerTop) => ({ layerTop })),
  ),
  winter: told(stated, switches, "winter emptying", groundWater(stated)),
});
