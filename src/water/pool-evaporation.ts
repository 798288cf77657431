import { faultIn, product, refused, scale, throughSteps, type Uncertain } from "../doubt/index.ts";
import { type Outcome, ok } from "../outcome/index.ts";
import { ofFactor, SECONDS_PER_DAY, waterFactors } from "./factors.ts";
import { saturationVapourPressure } from "./vapour.ts";

/**
 * Evaporation of an open pool by Carrier and ASHRAE, the second opinion beside FAO-56.
 *
 *   w = (p_w - p_a) (0.089 + 0.0782 V) / Y        kg/(s m²); as printed: W = (95 + 0.425 V)(p_w - p_a)/Y, lb/(h ft²), ft/min, in Hg, Btu/lb
 *
 *   p_w  saturation at the water's temperature, kPa      p_a  vapour pressure of the air, kPa
 *   V    wind over the water, m/s (`wind`)               Y    heat of evaporation, 2501 - 2.36 T_w kJ/kg
 *
 * Range: swimming pools with people in them; an undisturbed one was measured at 74 % of it (`still`). Source: ASHRAE Transactions
 * 4146, abstract (its print drops the division sign); SI form from memory, 0.6 % above the printed one. Accuracy: 20 to 30 % (own).
 */
export interface PoolAir {
  /** °C. */
  readonly water: Uncertain;
  readonly air: Uncertain;
  /** %. */
  readonly humidity: Uncertain;
  readonly wind: Uncertain;
}

export interface PoolEvaporation {
  /** m a day, one kilogram a square metre being a millimetre. */
  readonly inUse: Uncertain;
  readonly still: Uncertain;
}

function carrier({ water, air, humidity, wind }: Record<keyof PoolAir, number>): number {
  const pull = saturationVapourPressure(water) - (Math.min(100, Math.max(0, humidity)) / 100) * saturationVapourPressure(air);
  return Math.max(0, (pull * (0.089 + 0.0782 * Math.max(0, wind))) / (2501 - 2.36 * water));
}

/** Evaporation of a pool a day. Water that is colder than the air's dew point loses none. */
export function poolEvaporation({ water, air, humidity, wind }: PoolAir): Outcome<PoolEvaporation> {
  const fault = faultIn("weather", {
    water: [water, [0, 60]],
    air: [air, [-40, 60]],
    humidity: [humidity, [0, 100]],
    wind: [wind, "not negative"],
  });
  if (fault) return refused(fault);
  const inUse = scale(throughSteps({ water, air, humidity, wind }, carrier), SECONDS_PER_DAY / 1000);
  return ok({ inUse, still: product(inUse, ofFactor(waterFactors.stillPool)) });
}
