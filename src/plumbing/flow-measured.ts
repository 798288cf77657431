import { certain, product, quotient, rectangular, subtract, type Uncertain, unfit, withSource } from "../doubt/index.ts";
import { type Outcome, ok, refuse } from "../outcome/index.ts";

/** A bin must take this long to fill, seconds (own): with the hand's half second at each end the time is then known to some 4 %. */
export const BIN_LEAST_SECONDS = 20;
/** How well a hand starts or stops a watch, seconds, half-width at each end (own). */
export const WATCH_HALF_WIDTH = 0.5;
/** How well a bin's mark is known, as a share of its volume, half-width (own): a pail's mark, rim or belly. */
export const BIN_MARK_SHARE = 0.03;
/** A meter of which nothing is known, as a share of what it reads, half-width (own). */
export const METER_SHARE = 0.05;

/** A time by hand, seconds, with the doubt of starting and stopping. */
export const timeByHand = (seconds: number, halfWidth: number = WATCH_HALF_WIDTH): Uncertain =>
  withSource(withSource(certain(seconds), "watch/start", rectangular(halfWidth)), "watch/stop", rectangular(halfWidth));

/** A bin's volume, m³, with the doubt of its mark. */
export const binVolume = (volume: number, share: number = BIN_MARK_SHARE): Uncertain =>
  withSource(certain(volume), "bin/mark", rectangular(share * volume));

/**
 * Flow into a bin of known volume at the open pipe end, m³/s. It is the flow with the outlet at the bin's height, not at the lip.
 * Refuses a bin that fills in less than 20 s (a 5 gal bucket at 50 gpm is full in 6 s), with the volume that would do.
 */
export function flowFromBin(volume: Uncertain, time: Uncertain): Outcome<Uncertain> {
  const bad = unfit("flow/bin", "positive", { volume, time });
  if (bad) return bad;
  if (time.value < BIN_LEAST_SECONDS) {
    const enough = Math.ceil(((volume.value * BIN_LEAST_SECONDS) / time.value) * 1e6);
    return refuse("flow-bin-too-fast", "flow/bin", {
      milliseconds: Math.round(time.value * 1000),
      least: BIN_LEAST_SECONDS * 1000,
      enough,
    });
  }
  return ok(quotient(volume, time));
}

/** Before anybody goes for a bucket: seconds that a bin takes at the flow expected, refused as `flowFromBin` refuses. m³, m³/s. */
export function binFillTime(volume: number, expected: number): Outcome<number> {
  const bad = unfit("flow/bin", "positive", { volume, expected });
  if (bad) return bad;
  const flow = flowFromBin(certain(volume), certain(volume / expected));
  return flow.ok ? ok(volume / expected) : flow;
}

/**
 * Flow from the basin's own draw-down while pipe and falls fill and nothing comes back yet, m³/s: water area × drop / time.
 * `waterArea` in m² is what really is water (stone, pump vault and posts left out), `drop` in metres, `time` in seconds.
 */
export function flowFromDrawDown(waterArea: Uncertain, drop: Uncertain, time: Uncertain): Outcome<Uncertain> {
  const bad = unfit("flow/drawDown", "positive", { waterArea, drop, time });
  if (bad) return bad;
  return ok(quotient(product(waterArea, drop), time));
}

/** Flow by a meter that shows it, m³/s; `share` is the meter's permitted error as a share of what it reads, half-width. */
export function flowByMeter(shown: Uncertain, share: number = METER_SHARE): Outcome<Uncertain> {
  const bad = unfit("flow/meter", "positive", { shown }) ?? unfit("flow/meter", "not negative", { share });
  return bad ?? ok(withSource(shown, "meter/permitted-error", rectangular(share * shown.value)));
}

/** Flow by a meter that counts, m³/s: two readings of its count in m³ and the seconds between. Refuses a count that stood or ran back. */
export function flowByCounter(before: Uncertain, after: Uncertain, time: Uncertain, share: number = METER_SHARE): Outcome<Uncertain> {
  const counted = subtract(after, before);
  const bad = unfit("flow/meter", "positive", { counted, time });
  return bad ?? flowByMeter(quotient(counted, time), share);
}
