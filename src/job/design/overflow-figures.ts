import type { Uncertain } from "../../doubt/index.ts";
import { daysToOverflow, overflow } from "../../water/index.ts";
import { basinFull } from "./basin-figures.ts";
import { andThen, type Known, known, pick, together, waiting, work } from "./known.ts";
import type { Stated } from "./stated.ts";
import type { DesignSwitches } from "./switches.ts";

/** Room above the water at rest and the rain on the lined area that fills it. */
export const room = (stated: Stated, switches: DesignSwitches) =>
  work(
    together({
      perDepth: pick(basinFull(stated, switches), ({ perDepth }) => perDepth),
      freeboard: stated.number("freeboard"),
      linedArea: stated.number("linedArea"),
    }),
    overflow,
  );

export const rainToOverflow = (stated: Stated, switches: DesignSwitches): Known<Uncertain> =>
  andThen(room(stated, switches), (answer) => (answer.answer === "room for rain" ? known(answer.rainToOverflow) : waiting("freeboard")));

export const daysTo = (stated: Stated, switches: DesignSwitches) =>
  work(
    together({ room: room(stated, switches), linedArea: stated.number("linedArea"), rain: stated.number("rainPerDay") }),
    ({ room: { room: above }, linedArea, rain }) => daysToOverflow(above, linedArea, rain),
  );
