import type { Took } from "./medians.ts";

/** One ratio of a bench: two figures of the same run, and how far the one may exceed the other. */
export interface Line {
  readonly what: string;
  readonly unit: "ms" | "MB" | "kB" | "refused" | "mm" | "%";
  readonly ours: number;
  readonly beside: number;
  /** Absent where a figure is said and has no limit. */
  readonly atMost?: number;
  /** The same ratio in time of the processor, for a run on a busy machine; it is printed and not judged. */
  readonly work?: number;
}

/** Of two ways that were measured in turns, and that other processes did: what they worked is not known here. */
export const beside = (what: string, ours: Took, other: Took, atMost: number): Line => ({
  what,
  unit: "ms",
  ours: ours.time,
  beside: other.time,
  atMost,
});

/** Of two ways that were measured in turns. */
export const compared = (what: string, ours: Took, beside: Took, atMost: number): Line => ({
  what,
  unit: "ms",
  ours: ours.time,
  beside: beside.time,
  atMost,
  work: ours.work / beside.work,
});

export const ratio = ({ ours, beside }: Line): number => ours / beside;
export const holds = (line: Line): boolean => line.atMost === undefined || ratio(line) <= line.atMost;

const verdictOf = (line: Line): string => (line.atMost === undefined ? "said" : holds(line) ? "kept" : "NOT KEPT");
const finely = (value: number, unit: Line["unit"]): number => (unit === "mm" ? 2 : unit === "%" || (value < 20 && unit === "ms") ? 1 : 0);
/** Small figures with their tenths: whole milliseconds would hide half of them. */
const figure = (value: number, unit: Line["unit"]): string => `${value.toFixed(finely(value, unit))} ${unit}`;

/** A table as text; each line ends with whether its limit is kept. */
export function table(lines: readonly Line[]): string {
  const head = ["what", "ours", "beside", "ratio", "at most", "in work", ""];
  const rows = lines.map((line) => [
    line.what,
    figure(line.ours, line.unit),
    figure(line.beside, line.unit),
    ratio(line).toFixed(3),
    line.atMost?.toFixed(2) ?? "",
    line.work?.toFixed(3) ?? "",
    verdictOf(line),
  ]);
  const all = [head, ...rows];
  const widths = head.map((_, column) => Math.max(...all.map((row) => (row[column] as string).length)));
  const cell = (text: string, column: number): string => {
    const width = widths[column] as number;
    return column === 0 || column === head.length - 1 ? text.padEnd(width) : text.padStart(width);
  };
  return all.map((row) => row.map(cell).join("  ").trimEnd()).join("\n");
}
