import { faultNames } from "./draws.ts";
import type { FaultOutcome } from "./run.ts";

const plain = (n: number): string => n.toLocaleString("en-US");

/** What was broken, what was acknowledged, what is missing: the lines that are printed at the end. */
export function reportOf({ broke, told, records, jobs, originals, took, wrong }: FaultOutcome, seed: number): readonly string[] {
  const width = Math.max(...faultNames.map(({ length }) => length));
  const lines = faultNames.flatMap((name) => {
    const mine = broke.filter((one) => one.name === name);
    if (mine.length === 0) return [];
    const hits = mine.reduce((sum, one) => sum + one.hits, 0);
    return [`  ${name.padEnd(width)}  ${String(mine.length).padStart(4)} times, ${plain(hits).padStart(6)} broken by it`];
  });
  const all = took.reduce((sum, { seconds }) => sum + seconds, 0);
  const slowest = took.reduce((most, one) => (one.seconds > most.seconds ? one : most), { number: 0, seconds: 0 });
  const damaged = [...told.photos.values()].filter((one) => one.damaged).length;
  return [
    `Broken in ${plain(took.length)} rounds of seed ${seed}:`,
    ...lines,
    `Acknowledged: ${plain(told.entries.length)} entries in ${jobs} jobs, ${plain(told.photos.size)} photos (${damaged} of them damaged), ${records.length} records; ${plain(told.unanswered)} passes of sending had to be repeated.`,
    ...(wrong.length === 0
      ? ["There: each of these entries once, under its number, in a chain that verifies; the photos' bytes; the records."]
      : []),
    `On the disk: ${plain(originals)} originals that are what their names say.`,
    `Rounds took ${(all / Math.max(1, took.length)).toFixed(1)} s each, the longest ${slowest.seconds.toFixed(1)} s (round ${slowest.number}).`,
    wrong.length === 0 ? "Missing: nothing." : `Wrong: ${wrong.length}`,
    ...wrong.slice(0, 50).map((line) => `  ${line}`),
  ];
}
