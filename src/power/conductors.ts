/** Copper conductor sizes that a pump's branch circuit comes in, American Wire Gauge. */
export const wireSizes = ["16", "14", "12", "10", "8"] as const;
export type WireSize = (typeof wireSizes)[number];
export type Stranding = "solid" | "stranded";

export interface Conductor {
  /** Circular mils. */
  readonly area: number;
  /** Direct-current resistance of uncoated copper at 75 °C, ohms per 1000 ft. */
  readonly resistance: Readonly<Partial<Record<Stranding, number>>>;
  readonly seen: string;
}

/**
 * US National Electrical Code, chapter 9 table 8, as quoted. A page in circulation prints the solid values as stranded ones; the
 * product of resistance and area tells them apart: about 12.9 for stranded, 12.6 for solid.
 */
export const conductors: Readonly<Record<WireSize, Conductor>> = {
  "16": { area: 2580, resistance: { stranded: 4.99 }, seen: "stranded seen in an electricians' course; area from memory" },
  "14": { area: 4110, resistance: { solid: 3.07, stranded: 3.14 }, seen: "area and solid seen, stranded from memory" },
  "12": { area: 6530, resistance: { solid: 1.93, stranded: 1.98 }, seen: "area, solid and stranded seen" },
  "10": { area: 10_380, resistance: { solid: 1.21, stranded: 1.24 }, seen: "area and solid seen, stranded from memory" },
  "8": { area: 16_510, resistance: { solid: 0.764, stranded: 0.778 }, seen: "area and solid seen, stranded from memory" },
};

/** K of copper, ohms × circular mils per foot, that goes with stranded wire at 75 °C (seen). */
export const COPPER_K = 12.9;
