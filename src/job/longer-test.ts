import { fixedPerSi } from "../units/index.ts";
import { type LeakLoss, leakSettling, SECONDS_PER_DAY } from "../water/index.ts";
import { type Message, message } from "./finding.ts";
import { PART_OF_DAY } from "./test-weather.ts";

const MS_PER_SECOND = 1000;

/**
 * A leak test that is too close to call says how long it would have to be in all, or that no time settles it; `upper` is the limit in
 * millilitres a day. Undefined where there is nothing to say. What is doubtful only because the test was no whole number of days is
 * gone when it is one: such a test is asked for in whole days.
 */
export function longerTest(leak: LeakLoss | undefined, upper: number | undefined): Message | undefined {
  if (leak === undefined || upper === undefined) return undefined;
  const { value, parts } = leak.lossPerDay;
  const inParts = parts.has(PART_OF_DAY);
  const whole = inParts ? { value, parts: new Map([...parts].filter(([source]) => source !== PART_OF_DAY)) } : leak.lossPerDay;
  const settling = leakSettling({ ...leak, lossPerDay: whole }, upper / fixedPerSi("volume"));
  if (!settling.ok || (settling.value.answer === "settled" && !inParts)) return undefined;
  if (settling.value.answer === "time will not settle it") return message("leak.no-longer");
  const seconds = settling.value.answer === "settled" ? leak.seconds : Math.ceil(settling.value.seconds);
  const asked = inParts ? Math.ceil(seconds / SECONDS_PER_DAY) * SECONDS_PER_DAY : seconds;
  return message("leak.longer", { wholeDuration: asked * MS_PER_SECOND });
}
