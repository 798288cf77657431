import { certain, product, quotient, rectangular, type Uncertain, withSource } from "../../doubt/index.ts";
import { type Outcome, ok, refuse } from "../../outcome/index.ts";
import { type CordReach, cordReach, type VoltageDrop, voltageDrop, type WireSize, wireSizes } from "../../power/index.ts";
import type { FigureSource } from "../figures.ts";
import { basinHeight } from "./basin-figures.ts";
import { andThen, type Known, known, orElse, pick, together, work } from "./known.ts";
import { type Stated, statedBy } from "./stated.ts";
import { POWER_FACTOR, POWER_FACTOR_HALF_WIDTH } from "./vocabulary.ts";

/** How far the pump's cord reaches along its way; figures with their caution, never a verdict. */
export const cord = (stated: Stated): Known<CordReach> =>
  work(together({ length: stated.number("cordLength"), way: stated.number("cordRoute"), depth: basinHeight(stated) }), (of) =>
    cordReach(of.length, [of.way], of.depth),
  );

function wireOf(text: string): Outcome<WireSize> {
  const number = /\d+/.exec(text)?.[0];
  const wire = wireSizes.find((one) => one === number);
  return wire === undefined ? refuse("wire-size-unknown", "figures/wireSize", { wire: text }) : ok(wire);
}

/** Amperes: from the card; else from power and volts with a motor's power factor (own). */
function current(stated: Stated) {
  const factor = withSource(certain(POWER_FACTOR), "own:power-factor", rectangular(POWER_FACTOR_HALF_WIDTH));
  const byPower = () =>
    andThen(together({ power: stated.number("pumpPower"), voltage: stated.number("voltage") }), ({ power, voltage }) =>
      known(quotient(power, product(voltage, factor)), ["pumpCurrent"]),
    );
  return orElse(stated.number("pumpCurrent"), byPower);
}

export const drop = (stated: Stated): Known<VoltageDrop> =>
  work(
    together({
      current: current(stated),
      oneWay: stated.number("wireRun"),
      nominal: pick(stated.number("voltage"), ({ value }) => certain(value)),
      wire: work(stated.text("wireSize"), wireOf),
    }),
    voltageDrop,
  );

/** Share of the nominal voltage that a wire's run as it was measured (metres, one way) loses. */
export const dropAlong = (source: FigureSource, wireRun: Uncertain): Known<Uncertain> =>
  pick(drop(statedBy(source, { wireRun })), ({ share }) => share);
