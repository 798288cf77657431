import { certain } from "../../doubt/index.ts";
import type { setOutPlaces } from "../../geometry/index.ts";
import { socketDimensions, VELOCITY_GUIDANCE, witnessMark } from "../../plumbing/index.ts";
import { inches } from "../../units/index.ts";
import { andThen, known, pick, together, waiting, work } from "./known.ts";
import { bore, contents, friction, frictionDarcy, lining, run, runsBack, size, velocity, working } from "./line-figures.ts";
import { daysTo, rainToOverflow, room } from "./overflow-figures.ts";
import { cord, drop } from "./power-figures.ts";
import { heights, keyOfSetOut } from "./set-out-figures.ts";
import { lipFlow, perLip, reckonedFlow, sheet, tiltSeen, wanted } from "./spillway-figures.ts";
import type { Stated } from "./stated.ts";
import type { DesignSwitches } from "./switches.ts";

import { cautioned, days, type Figure, of, type Worked } from "./worked.ts";

export function linePart(stated: Stated, checkValve: boolean) {
  const works = working(stated, checkValve);
  const flow = reckonedFlow(stated, checkValve);
  const smooth = andThen(lining(stated), (kind) => (kind === "rigid PVC" ? known(true) : waiting("pipeKind")));
  const named = (kind: string): Pick<Worked, "answer"> => (kind === "one point" ? {} : { answer: kind });
  return {
    pipeBore: of(bore(stated)),
    equivalentRun: of(run(stated, checkValve)),
    flow: pick(works, ({ outcome, flow: value }): Worked => ({ ...(value && { value }), ...named(outcome.kind) })),
    pumpHead: pick(works, ({ outcome, head: value }): Worked => ({ ...(value && { value }), ...named(outcome.kind) })),
    frictionHead: of(andThen(flow, (q) => friction(stated, checkValve, q))),
    frictionHeadDarcy: of(
      andThen(together({ flow, smooth }), ({ flow: q }) => pick(frictionDarcy(stated, checkValve, q), ({ head }) => head)),
    ),
    velocity: pick(
      andThen(flow, (q) => velocity(stated, q)),
      ({ velocity: value }): Worked => (value.value > VELOCITY_GUIDANCE ? { value, warning: "above the velocity guidance" } : { value }),
    ),
    pipeContents: of(contents(stated)),
    drainBack: of(runsBack(stated, checkValve)),
  };
}

export function spillwayPart(stated: Stated, checkValve: boolean) {
  const water = sheet(stated, checkValve);
  const ratio = lipFlow(stated, checkValve);
  return {
    flowWanted: of(wanted(stated)),
    flowPerInch: of(perLip(stated, checkValve)),
    headOnLip: pick(water, ({ head: value, warning }): Worked => ({ value, ...(warning && { warning }) })),
    lipFlowRatio: pick(ratio, (lip): Worked => (lip.answer === "runs all along" ? { value: lip.ratio } : { answer: lip.answer })),
    lipOutOfLevelSeen: of(tiltSeen(stated, checkValve)),
  };
}

export function powerPart(stated: Stated) {
  const reach = cord(stated);
  const wire = drop(stated);
  return {
    cordNeeded: cautioned(pick(reach, ({ needed }) => needed)),
    cordLeft: cautioned(pick(reach, ({ left }) => left)),
    voltageDrop: cautioned(pick(wire, ({ drop: volts }) => volts)),
    voltageDropShare: cautioned(pick(wire, ({ share }) => share)),
    wireRunAtNotedShare: cautioned(pick(wire, ({ runAtNotedShare }) => runAtNotedShare)),
  };
}

export function groundPart(stated: Stated, switches: DesignSwitches) {
  const above = room(stated, switches);
  const socket = (schedule: "leastDepth40" | "leastDepth80") =>
    of(pick(size(stated), (nominal) => certain(inches(socketDimensions[nominal][schedule]))));
  const design = heights(stated);
  const height = (place: (typeof setOutPlaces)[number]): Figure =>
    andThen(design, ({ heights: all, missing }) => {
      const found = all.find((one) => one.place === place);
      if (found) return known({ value: certain(found.aim) });
      return waiting(...(missing.find((one) => one.place === place)?.figures ?? []).map(keyOfSetOut));
    });
  return {
    witnessMark: of(work(stated.number("socketDepth"), witnessMark)),
    socketLeastSchedule40: socket("leastDepth40"),
    socketLeastSchedule80: socket("leastDepth80"),
    roomForRain: pick(above, ({ room: value, answer }): Worked => (answer === "room for rain" ? { value } : { value, answer })),
    rainToOverflow: of(rainToOverflow(stated, switches)),
    daysToOverflow: pick(
      daysTo(stated, switches),
      (lasts): Worked => (lasts.answer === "overflows after" ? { value: days(lasts.days) } : { answer: lasts.answer }),
    ),
    dugBottomOverGrade: height("dug bottom"),
    topOfBedOverGrade: height("top of bed"),
    rimOverGrade: height("rim"),
    wallFittingOverGrade: height("wall fitting"),
    spillwayLipOverGrade: height("spillway lip"),
    linerEdgeOverGrade: height("liner edge"),
  };
}
