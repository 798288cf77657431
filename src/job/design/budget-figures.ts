import { certain, product, type Uncertain } from "../../doubt/index.ts";
import { ok } from "../../outcome/index.ts";
import {
  daysWithoutMakeUp,
  expectedDrawDown,
  type InTransit,
  reserve,
  timeToFill,
  timeUntilAir,
  waterInTransit,
} from "../../water/index.ts";
import { basinFull, basinUsable } from "./basin-figures.ts";
import { ifKnown, type Known, known, orElse, pick, together, work } from "./known.ts";
import { runsBack } from "./line-figures.ts";
import { reckonedFlow, sheet } from "./spillway-figures.ts";
import type { Stated } from "./stated.ts";
import type { DesignSwitches } from "./switches.ts";

const stream = (stated: Stated) =>
  together({ length: stated.number("streamLength"), width: stated.number("streamWidth"), depth: stated.number("streamDepth") });

const poolArea = (stated: Stated): Known<Uncertain> =>
  pick(together({ length: stated.number("poolLength"), width: stated.number("poolWidth") }), ({ length, width }) => product(length, width));

const pool = (stated: Stated, checkValve: boolean) =>
  together({ area: poolArea(stated), head: pick(sheet(stated, checkValve), ({ head }) => head) });

const hasPool = (stated: Stated): boolean =>
  ifKnown(stated.number("poolLength")) !== undefined || ifKnown(stated.number("poolWidth")) !== undefined;

/** Water in the stream or fall, m³. */
export const inStream = (stated: Stated): Known<Uncertain> =>
  pick(
    work(stream(stated), (piece) => waterInTransit({ pieces: [piece], pools: [] })),
    ({ stream: water }) => water,
  );

/** Water that the pool behind the lip gains while it runs, m³. */
export const inPools = (stated: Stated, checkValve: boolean): Known<Uncertain> =>
  pick(
    work(pool(stated, checkValve), (one) => waterInTransit({ pieces: [], pools: [one] })),
    ({ pools }) => pools,
  );

/**
 * Water in transit: the stream or fall, the pool behind the lip, what runs back out of the pipe. A design that names no pool is taken
 * to have none, and says so; the stream is asked for, since every fall has a way down.
 */
export function inTransit(stated: Stated, switches: DesignSwitches): Known<InTransit> {
  const checkValve = switches.checkValve === true;
  const parts = together({
    stream: stream(stated),
    pools: hasPool(stated) ? pick(pool(stated, checkValve), (one) => [one]) : known([], ["poolLength"]),
    pipe: runsBack(stated, checkValve),
  });
  return work(parts, ({ stream: piece, pools, pipe }) =>
    waterInTransit({ pieces: [piece], pools, pipe: { contents: pipe, staysFull: false } }),
  );
}

export const drawDown = (stated: Stated, switches: DesignSwitches): Known<Uncertain> =>
  work(together({ away: inTransit(stated, switches), basin: basinFull(stated, switches) }), ({ away, basin }) =>
    expectedDrawDown(away.whole, basin.perDepth),
  );

/** The reserve, with the two waters that it is made of, m³. */
export const reserveOf = (stated: Stated, switches: DesignSwitches) =>
  work(together({ away: inTransit(stated, switches), basin: basinUsable(stated, switches) }), ({ away, basin }) => {
    const found = reserve(basin.usable, away.whole);
    return found.ok ? ok({ ...found.value, usable: basin.usable, away: away.whole }) : found;
  });

export const filling = (stated: Stated, switches: DesignSwitches): Known<Uncertain> =>
  work(together({ away: inTransit(stated, switches), flow: reckonedFlow(stated, switches.checkValve === true) }), ({ away, flow }) =>
    timeToFill(away.whole, flow),
  );

/** Time until the intake draws air while nothing comes back: at start-up, or by a broken edge. */
export const untilAir = (stated: Stated, switches: DesignSwitches) =>
  work(together({ basin: basinUsable(stated, switches), flow: reckonedFlow(stated, switches.checkValve === true) }), ({ basin, flow }) =>
    timeUntilAir(basin.usable, flow, certain(0)),
  );

/** Loss a day, m³: as stated, else what evaporates from the open water. */
const lossPerDay = (stated: Stated): Known<Uncertain> =>
  orElse(stated.number("lossPerDay"), () =>
    work(together({ depth: stated.number("evaporationPerDay"), area: stated.number("openWaterArea") }), ({ depth, area }) =>
      ok(product(depth, area)),
    ),
  );

export const daysLeft = (stated: Stated, switches: DesignSwitches) =>
  work(together({ left: reserveOf(stated, switches), loss: lossPerDay(stated) }), ({ left, loss }) => daysWithoutMakeUp(left.left, loss));
