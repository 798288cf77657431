import { add, certain, expanded, subtract, type Uncertain } from "../../doubt/index.ts";
import { WIRING_CAUTION } from "../../power/index.ts";
import { rainInTheHole, waterToLeave } from "../../water/index.ts";
import { type Answered, compared, lineOf, slug } from "./answered.ts";
import { reserveAdvice, reserveRoom, stoneAdvice } from "./basin-advice.ts";
import { emptyBasin } from "./basin-figures.ts";
import { reserveOf } from "./budget-figures.ts";
import type { DesignLine } from "./design-line.ts";
import { roomState, type Said, said } from "./design-message.ts";
import { rainFacts, rainThatFloats } from "./float-figures.ts";
import { andThen, fromOutcome, ifKnown, type Known, known, orElse, pick, together, work } from "./known.ts";
import { cord } from "./power-figures.ts";
import type { Stated } from "./stated.ts";
import { stone } from "./stone-figures.ts";
import type { DesignSwitches } from "./switches.ts";

/** A ratio as so many times, the same in every language and unit. */
const times = (ratio: number): string => ratio.toFixed(1);

export function reserveLine(stated: Stated, switches: DesignSwitches): DesignLine {
  const parts = together({ room: reserveRoom(stated, switches), found: reserveOf(stated, switches) });
  const asked = ifKnown(stated.number("reserveWanted"))?.value;
  const answer = pick(parts, ({ room, found }): Answered => {
    const figures: Record<string, Said> = {
      usable: ["volume", found.usable.value],
      away: ["volume", found.away.value],
      ratio: times(found.ratio.value),
    };
    const state = roomState(room, "volume");
    const advice = () => reserveAdvice(stated, switches);
    if (asked === undefined) return compared("reserve", state, figures, advice);
    const line = compared("reserve", state, { ...figures, wanted: times(asked) }, advice);
    return { ...line, says: { ...line.says, key: `design.reserve.wanted-${slug(state)}` } };
  });
  return lineOf("reserve", answer);
}

/** Figures beside each other and who is to be asked; never a verdict. */
export function cordLine(stated: Stated): DesignLine {
  const answer = pick(cord(stated), ({ way, needed, left }): Answered => {
    const figures: Record<string, Said> = {
      way: ["length", way.value],
      needed: ["length", needed.value],
      left: ["length", Math.abs(left.value)],
    };
    const short = left.value < expanded(left);
    return {
      state: "ask the electrician",
      says: said(left.value < 0 ? "design.cord.short" : "design.cord.left", figures),
      advice: short ? [said("design.advice.nearer-outlet", { needed: ["length", needed.value + expanded(left)] })] : [],
      caution: WIRING_CAUTION,
    };
  });
  return lineOf("cord", answer);
}

/** Water against the basin after tonight's rain, with what already stands in the hole, m. */
function tonight(stated: Stated, switches: DesignSwitches, area: Uncertain): Known<Uncertain> {
  const standing = orElse(stated.number("waterInHole"), () => known(certain(0)));
  const rain = work(rainFacts(stated, switches), (facts) => rainInTheHole(facts, area));
  return pick(together({ standing, rain }), (water) => add(water.standing, water.rain));
}

export function floatLine(stated: Stated, switches: DesignSwitches): DesignLine {
  const basin = emptyBasin(stated, switches);
  const parts = together({
    basin,
    outside: andThen(basin, ({ area }) => tonight(stated, switches, area)),
    rain: stated.number("rainExpected"),
  });
  const answer = andThen(parts, ({ basin: empty, outside, rain }) =>
    pick(fromOutcome(waterToLeave(empty, outside)), ({ risesOn, leaveAtLeast, volume, answer: leave }): Answered => {
      const state = roomState(subtract(risesOn, outside), "length");
      const figures: Record<string, Said> = {
        rain: ["length", rain.value],
        outside: ["length", outside.value],
        floatsOn: ["length", risesOn.value],
      };
      const water =
        leave === "full is not enough"
          ? said("design.advice.keep-water-out")
          : said("design.advice.leave-water", { depth: ["length", leaveAtLeast], volume: ["volume", volume] });
      return compared("float", state, figures, () => [water]);
    }),
  );
  const lifting = ifKnown(rainThatFloats(stated, switches));
  return lineOf(
    "float",
    answer,
    lifting === undefined ? undefined : said("design.float.rain-not-known", { rain: ["length", lifting.value] }),
  );
}

export function stoneLine(stated: Stated, switches: DesignSwitches): DesignLine {
  const answer = pick(stone(stated, switches), (on): Answered => {
    const stones: Record<string, Said> = { stone: ["mass", on.mass.value], doubt: ["mass", expanded(on.mass)] };
    if (on.answer === "ask the maker") return { state: "ask the maker", says: said("design.stone.ask-the-maker", stones) };
    return compared("stone", roomState(on.room, "mass"), { ...stones, load: ["mass", on.load.value] }, () => stoneAdvice(stated, switches));
  });
  return lineOf("stone", answer);
}
