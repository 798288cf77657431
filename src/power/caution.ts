/**
 * Key of the caution that every figure of this room carries: electricity near water, power off before a hand goes in; local code
 * and a licensed person decide; the figure is a prompt to ask the electrician, never a verdict.
 */
export const WIRING_CAUTION = "ask-the-electrician";

export interface Cautioned {
  readonly caution: typeof WIRING_CAUTION;
}

/** The figures with their caution: nothing leaves this room without it. */
export const cautioned = <T extends object>(figures: T): T & Cautioned => ({ ...figures, caution: WIRING_CAUTION });
