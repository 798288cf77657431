import { firstOrder, quotient, type Uncertain, unfit } from "../doubt/index.ts";
import { type Outcome, ok, refuse } from "../outcome/index.ts";
import { feet } from "../units/index.ts";
import { type Cautioned, cautioned } from "./caution.ts";
import { COPPER_K, conductors, type Stranding, type WireSize } from "./conductors.ts";

/** Shares of the nominal voltage that the code's informational notes name: branch circuit, and feeder with branch. Notes, not rules. */
export const NOTED_SHARES = { branch: 0.03, total: 0.05 } as const;

export interface BranchRun {
  /** Amperes. */
  readonly current: Uncertain;
  /** One way, metres. */
  readonly oneWay: Uncertain;
  /** Volts, nominal. */
  readonly nominal: Uncertain;
  readonly wire: WireSize;
  readonly stranding?: Stranding;
}

export interface VoltageDrop extends Cautioned {
  /** Volts. */
  readonly drop: Uncertain;
  /** Of the nominal voltage. */
  readonly share: Uncertain;
  /** One way, metres, at which the drop would be the noted 3 % of a branch circuit. A figure to ask about, never a verdict. */
  readonly runAtNotedShare: Uncertain;
}

const FOOT = feet(1);

/** Drop of a run whose loop has `perFoot` ohms per foot one way: VD = 2 L R I. */
function dropOf(run: BranchRun, perFoot: number): Outcome<VoltageDrop> {
  const { current, oneWay, nominal } = run;
  const bad = unfit("power/drop", "positive", { current, oneWay, nominal });
  if (bad) return bad;
  const perMetre = (2 * perFoot) / FOOT;
  const volts = perMetre * oneWay.value * current.value;
  const drop = firstOrder(volts, [
    { times: perMetre * current.value, of: oneWay },
    { times: perMetre * oneWay.value, of: current },
  ]);
  const share = quotient(drop, nominal);
  const run3 = (NOTED_SHARES.branch * nominal.value) / (perMetre * current.value);
  const runAtNotedShare = firstOrder(run3, [
    { times: run3 / nominal.value, of: nominal },
    { times: -run3 / current.value, of: current },
  ]);
  return ok(cautioned({ drop, share, runAtNotedShare }));
}

/**
 * Voltage drop of a single-phase run by the wire's resistance: VD = 2 L R I / 1000.
 *
 * L  one way, feet (`oneWay`, metres here)
 * R  ohms per 1000 ft, chapter 9 table 8 at 75 °C (`conductors`)
 * I  amperes, `current`
 *
 * Direct-current resistance, no reactance: right for these sizes. A cooler wire drops less (20 °C: about 82 %). Refuses figures that
 * are not finite or not above zero, and a wire whose resistance the table lacks.
 */
export function voltageDrop(run: BranchRun): Outcome<VoltageDrop> {
  const resistance = conductors[run.wire].resistance[run.stranding ?? "stranded"];
  if (resistance === undefined) return refuse("wire-size-unknown", "power/wire", { wire: run.wire });
  return dropOf(run, resistance / 1000);
}

/** The same by the wire's area: VD = 2 K I L / CM, K in ohms × circular mils per foot. The short form that electricians use. */
export function voltageDropByArea(run: Omit<BranchRun, "stranding">, k: number = COPPER_K): Outcome<VoltageDrop> {
  const bad = unfit("power/drop", "positive", { k });
  return bad ?? dropOf(run, k / conductors[run.wire].area);
}
