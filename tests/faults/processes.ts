import { readdirSync, readFileSync } from "node:fs";

interface Told {
  readonly parent: number;
  /** Processor time in ticks, usually of 10 ms. */
  readonly ticks: number;
}

/** What Linux says of a process (proc(5), /proc/pid/stat); undefined where there is no such process, or no /proc. */
const told = (pid: number): Told | undefined => {
  try {
    const text = readFileSync(`/proc/${pid}/stat`, "utf8");
    // the name in brackets may hold blanks and brackets of its own
    const fields = text.slice(text.lastIndexOf(")") + 2).split(" ");
    if (fields[0] === "Z") return undefined;
    return { parent: Number(fields[1]), ticks: Number(fields[11]) + Number(fields[12]) };
  } catch {
    return undefined;
  }
};

/** Processor time of a process; undefined where the system does not tell. */
export const ticksOf = (pid: number): number | undefined => told(pid)?.ticks;

export const isAlive = (pid: number): boolean => told(pid) !== undefined;

/** All that a process has started, and what they have started. Empty where there is no /proc. */
export function descendantsOf(pid: number): readonly number[] {
  let all: readonly number[];
  try {
    all = readdirSync("/proc")
      .filter((name) => /^\d+$/.test(name))
      .map(Number);
  } catch {
    return [];
  }
  const parents = new Map(all.map((one) => [one, told(one)?.parent]));
  const found = new Set([pid]);
  for (let before = 0; before < found.size; ) {
    before = found.size;
    for (const [one, parent] of parents) if (parent !== undefined && found.has(parent)) found.add(one);
  }
  found.delete(pid);
  return [...found];
}
