import { inches, metres } from "../../units/index.ts";
import { waterOverDepth } from "../../water/index.ts";
import { basinFull, basinUsable } from "./basin-figures.ts";
import { daysLeft, drawDown, filling, inPools, inStream, inTransit, reserveOf, untilAir } from "./budget-figures.ts";
import { leaveOn, lift, rainThatFloats } from "./float-figures.ts";
import { pick, together, work } from "./known.ts";
import type { Stated } from "./stated.ts";
import { boulder, stone } from "./stone-figures.ts";
import type { DesignSwitches } from "./switches.ts";

import { days, of, toLeave, type Worked } from "./worked.ts";

export function basinPart(stated: Stated, switches: DesignSwitches) {
  const full = basinFull(stated, switches);
  const usable = basinUsable(stated, switches);
  const over = (depth: number) => of(work(full, ({ perDepth }) => waterOverDepth(perDepth, metres(depth))));
  return {
    basinGross: of(pick(full, ({ gross }) => gross)),
    waterPerInch: over(inches(1)),
    waterPerCentimetre: over(0.01),
    waterBelowIntake: of(pick(usable, ({ belowIntake }) => belowIntake)),
    waterLostToTilt: of(pick(together({ usable, tilt: stated.number("outOfLevel") }), ({ usable: { lostToTilt } }) => lostToTilt)),
    basinUsable: pick(usable, ({ usable: value, answer }): Worked => (answer === "water above the intake" ? { value } : { value, answer })),
  };
}

export function floatPart(stated: Stated, switches: DesignSwitches) {
  const on = leaveOn(stated, switches);
  return {
    floatsOn: pick(lift(stated, switches), ({ liftDepth: value, answer }): Worked => (answer === "lifts" ? { value } : { value, answer })),
    leaveForWaterSeen: toLeave(on.seen),
    leaveForRain: toLeave(on.rain),
    leaveForWashingIn: toLeave(on.washingIn),
    leaveForWinter: toLeave(on.winter),
    rainThatFloats: of(rainThatFloats(stated, switches)),
  };
}

export function stonePart(stated: Stated, switches: DesignSwitches) {
  const on = stone(stated, switches);
  return {
    stoneOnLid: of(pick(on, ({ mass }) => mass)),
    boulderWeight: of(boulder(stated)),
    lidLoadLeft: pick(on, (answer): Worked => (answer.answer === "compared" ? { value: answer.room } : { answer: answer.answer })),
  };
}

export function budgetPart(stated: Stated, switches: DesignSwitches) {
  const away = inTransit(stated, switches);
  const left = reserveOf(stated, switches);
  return {
    waterInStream: of(inStream(stated)),
    waterInPools: of(inPools(stated, switches.checkValve === true)),
    waterInTransit: of(pick(away, ({ whole }) => whole)),
    drawDown: of(drawDown(stated, switches)),
    reserveRatio: of(pick(left, ({ ratio }) => ratio)),
    reserveLeft: pick(left, ({ left: value, answer }): Worked => (answer === "intake stays covered" ? { value } : { value, answer })),
    timeToFill: of(filling(stated, switches)),
    timeUntilAir: pick(
      untilAir(stated, switches),
      (air): Worked => (air.answer === "draws air after" ? { value: air.seconds } : { answer: air.answer }),
    ),
    daysWithoutMakeUp: pick(
      daysLeft(stated, switches),
      (lasts): Worked => (lasts.answer === "lasts" ? { value: days(lasts.days) } : { answer: lasts.answer }),
    ),
  };
}
