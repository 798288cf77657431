import * as power from "#core/power/index.ts";
import { positive, type Rows, refuses, under } from "./rows.ts";

const run = under("power/drop", { current: [8, "positive"], oneWay: [30, "positive"], nominal: [120, "positive"] });

export const powerRows: Rows = {
  cordReach: refuses(
    {
      ...under("power/cord", { cord: [6, "positive"], basinDepth: [0.6, "positive"] }),
      leg: { value: 2, wanted: "not negative", place: "power/cord/legs/1" },
    },
    ({ cord, basinDepth, leg }) => power.cordReach(cord, [cord, leg], basinDepth),
  ),
  coverDepthFigures: refuses({ own: positive(0.6, "power/cover") }, (_, { own }) => power.coverDepthFigures(own)),
  voltageDrop: refuses(run, (of) => power.voltageDrop({ ...of, wire: "12" })),
  voltageDropByArea: refuses({ ...run, k: positive(12.9, "power/drop/k") }, ({ current, oneWay, nominal }, { k }) =>
    power.voltageDropByArea({ current, oneWay, nominal, wire: "12" }, k),
  ),
};
