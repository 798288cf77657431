import { readdir, readFile } from "node:fs/promises";

const STEP_MS = 100;

async function textOf(path: string): Promise<string> {
  try {
    return await readFile(path, "utf8");
  } catch {
    // it ended in between
    return "";
  }
}

/**
 * Megabytes of a process and of all that descend from it, without what can be read again from a file. What several share is counted once, by
 * shares (PSS): of a program's own file that share changes with whatever else runs the program. Linux only.
 */
async function megabytesOf(pid: number): Promise<number> {
  const all = (await readdir("/proc")).filter((name) => /^\d+$/.test(name)).map(Number);
  const parents = new Map<number, number>();
  for (const one of all) {
    const fields = (await textOf(`/proc/${one}/stat`)).replace(/^.*\) /s, "").split(" ");
    if (fields[1] !== undefined) parents.set(one, Number(fields[1]));
  }
  const descends = (one: number): boolean => {
    for (let at: number | undefined = one; at !== undefined && at > 1; at = parents.get(at)) if (at === pid) return true;
    return false;
  };
  let kilobytes = 0;
  for (const one of all.filter(descends)) {
    for (const [, found] of (await textOf(`/proc/${one}/smaps_rollup`)).matchAll(/^Pss_(?:Anon|Shmem):\s+(\d+) kB$/gm))
      kilobytes += Number(found);
  }
  return kilobytes / 1024;
}

/** Looks at a process and its descendants until it is ended. */
export function peakOf(pid: number): { end(): Promise<{ readonly before: number; readonly peak: number }> } {
  let going = true;
  const looking = (async () => {
    const before = await megabytesOf(pid);
    let peak = before;
    while (going) {
      peak = Math.max(peak, await megabytesOf(pid));
      await new Promise((resolve) => setTimeout(resolve, STEP_MS));
    }
    // once more: on a busy machine the last look may lie before what came last
    return { before, peak: Math.max(peak, await megabytesOf(pid)) };
  })();
  return {
    async end() {
      going = false;
      return looking;
    },
  };
}
