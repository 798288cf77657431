import type { Measured } from "./spans.ts";
import type { Trial } from "./trial.ts";

export interface Cell {
  readonly tilt: number;
  readonly distance: number;
  readonly trials: readonly Trial[];
}

export const meanOf = (list: readonly number[]): number => list.reduce((sum, value) => sum + value, 0) / list.length;

/** Rows of text in columns. */
export function listed(rows: readonly (readonly string[])[]): string {
  const widths = (rows[0] ?? []).map((_, column) => Math.max(...rows.map((row) => (row[column] ?? "").length)));
  return rows
    .map((row) =>
      row
        .map((text, column) => text.padEnd(widths[column] ?? 0))
        .join("  ")
        .trimEnd(),
    )
    .join("\n");
}

export const falseShare = (list: readonly Measured[]): string =>
  list.length === 0 ? "" : `${((100 * list.filter(({ error, doubt }) => Math.abs(error) > doubt).length) / list.length).toFixed(1)} %`;

const millimetres = (metres: number): string => (1000 * metres).toFixed(2);

function figures(list: readonly Measured[]): string {
  if (list.length === 0) return "out of the picture";
  const errors = list.map(({ error }) => Math.abs(error));
  const mean = millimetres(meanOf(errors));
  return `${mean} / ${millimetres(Math.max(...errors))} / ${millimetres(meanOf(list.map(({ doubt }) => doubt)))}, ${falseShare(list)}`;
}

export function accuracy(cells: readonly Cell[], of: (trial: Trial) => readonly Measured[]): string {
  const rows = cells.map(({ tilt, distance, trials }) => {
    const all = trials.flatMap(of);
    const within = [1, 2, 3].map((n) => figures(all.filter((measured) => measured.within === n)));
    const missed = trials.filter(({ refined }) => refined < 4).length;
    return [`${tilt}°`, `${distance} m`, ...within, missed === 0 ? "" : `${missed} of ${trials.length} photos with a code missed`];
  });
  return listed([["tilt", "from", "within 1", "within 2", "within 3", ""], ...rows]);
}
