import type { Parameters } from "fast-check";

/** `fc.assert` as the long run has it. */
export type Long = (property: unknown, parameters?: Parameters<unknown>) => unknown;

/** What one test of the long run did. */
export interface LongRun {
  /** Runs of its properties together. */
  readonly runs: number;
  /** Lines to print as they are. */
  readonly lines: readonly string[];
}

declare module "vitest" {
  interface TaskMeta {
    long?: LongRun;
  }
}

let runs = 0;
let lines: string[] = [];

export function begin(): void {
  runs = 0;
  lines = [];
}

export const end = (): LongRun => ({ runs, lines });

export function ran(more: number): void {
  runs += more;
}

export function print(line: string): void {
  lines.push(line);
}
