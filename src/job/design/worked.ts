import { certain, scale, type Uncertain } from "../../doubt/index.ts";
import { WIRING_CAUTION } from "../../power/index.ts";
import { SECONDS_PER_DAY, type WaterToLeave } from "../../water/index.ts";
import { type Known, pick } from "./known.ts";

/** What one figure comes to before it leaves the core: SI. */
export interface Worked {
  readonly value?: Uncertain;
  readonly answer?: string;
  readonly warning?: string;
  readonly caution?: string;
}
export type Figure = Known<Worked>;

export const of = (from: Known<Uncertain>): Figure => pick(from, (value) => ({ value }));
export const cautioned = (from: Known<Uncertain>): Figure => pick(from, (value) => ({ value, caution: WIRING_CAUTION }));

export const toLeave = (from: Known<WaterToLeave>): Figure =>
  pick(from, ({ answer, leaveAtLeast }) => ({ answer, value: certain(leaveAtLeast) }));

export const days = (from: Uncertain): Uncertain => scale(from, SECONDS_PER_DAY);
