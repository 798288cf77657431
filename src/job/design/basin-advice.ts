import { expanded, scale, subtract, type Uncertain } from "../../doubt/index.ts";
import { reserveOf } from "./budget-figures.ts";
import type { DesignMessage } from "./design-line.ts";
import { nearestEnough, roomState, said } from "./design-message.ts";
import { ifKnown, type Known, pick } from "./known.ts";
import { runsBack } from "./line-figures.ts";
import type { Stated } from "./stated.ts";
import { stone } from "./stone-figures.ts";
import type { DesignSwitches } from "./switches.ts";
import type { Instead, NumberKey } from "./vocabulary.ts";

/** No basin is made this many times larger than planned: beyond it another basin is meant (own). */
const MOST_TIMES = 6;

/** Usable water less what must be there, m³: the company's multiple of the water in transit, or all of it and no more. */
export function reserveRoom(stated: Stated, switches: DesignSwitches): Known<Uncertain> {
  const times = ifKnown(stated.number("reserveWanted"))?.value ?? 1;
  return pick(reserveOf(stated, switches), ({ left, usable, away }) => (times === 1 ? left : subtract(usable, scale(away, times))));
}

const isEnough = (stated: Stated, switches: DesignSwitches): boolean => {
  const room = ifKnown(reserveRoom(stated, switches));
  return room !== undefined && roomState(room, "volume") === "enough";
};

/** Sizes and the maker's rating, as many times as large as they are; the doubt of one made larger stays what it is. */
function times(stated: Stated, sizes: readonly NumberKey[], share: number): Instead {
  const grown = sizes.flatMap((key) => {
    const value = ifKnown(stated.number(key));
    return value === undefined ? [] : [[key, { value: value.value * share, parts: value.parts }] as const];
  });
  return Object.fromEntries(grown);
}

function larger(stated: Stated, switches: DesignSwitches, key: NumberKey, power: 1 | 2): number | undefined {
  const value = ifKnown(stated.number(key))?.value;
  if (value === undefined) return undefined;
  const share = nearestEnough(1, MOST_TIMES, (of) => {
    const volume = ifKnown(stated.number("basinVolume"));
    const rated = volume === undefined ? {} : { basinVolume: scale(volume, of ** power) };
    return isEnough(stated.instead({ ...times(stated, [key], of), ...rated }), switches);
  });
  return share === undefined ? undefined : share * value;
}

/** What to change where the reserve is not surely enough. */
export function reserveAdvice(stated: Stated, switches: DesignSwitches): readonly DesignMessage[] {
  const room = ifKnown(reserveRoom(stated, switches));
  if (room === undefined) return [];
  const missing = expanded(room) - room.value;
  const depth = ifKnown(stated.number("basinDepth"))?.value;
  const deep = larger(stated, switches, "basinDepth", 1);
  const round = switches.roundBasin === true || ifKnown(stated.number("basinWidth")) === undefined;
  const wide = round ? larger(stated, switches, "basinDiameter", 2) : larger(stated, switches, "basinWidth", 1);
  const back = switches.checkValve === true ? undefined : ifKnown(runsBack(stated, false));
  return [
    said("design.advice.more-water", { volume: ["volume", missing] }),
    ...(deep === undefined || depth === undefined
      ? []
      : [said("design.advice.deeper-basin", { depth: ["length", deep], deeper: ["length", deep - depth] })]),
    ...(wide === undefined
      ? []
      : [said(round ? "design.advice.larger-diameter" : "design.advice.wider-basin", { width: ["length", wide] })]),
    ...(back === undefined || back.value <= 0 ? [] : [said("design.advice.check-valve", { volume: ["volume", back.value] })]),
  ];
}

/** How deep the stone may lie on this lid, with the boulder where it is. */
export function stoneAdvice(stated: Stated, switches: DesignSwitches): readonly DesignMessage[] {
  const depth = ifKnown(stated.number("stoneDepth"));
  if (depth === undefined) return [];
  const share = nearestEnough(1, 0, (of) => {
    const on = ifKnown(stone(stated.instead({ stoneDepth: { value: depth.value * of, parts: depth.parts } }), switches));
    return on?.answer === "compared" && roomState(on.room, "mass") === "enough";
  });
  if (share === undefined) return [said("design.advice.lid-too-weak")];
  return [said("design.advice.thinner-stone", { depth: ["length", share * depth.value] })];
}
