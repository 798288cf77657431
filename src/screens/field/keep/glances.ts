import type { Database } from "./database.ts";
import { glanceMark, keptGlance } from "./heads.ts";
import type { Glance, JobHead } from "./shapes.ts";

/** After the last change, ms: somebody who enters one thing after the other is not disturbed. */
const QUIET_MS = 1_500;

/** What the first screen says of each job: kept for the next start, and true only of what it was made of. */
export class Glances {
  readonly #database: Database;
  readonly #app: string;
  /** Made since this page was opened. */
  readonly #made = new Map<string, Glance & { readonly mark: string }>();
  #timer: ReturnType<typeof setTimeout> | undefined;

  constructor(database: Database, app: string) {
    this.#database = database;
    this.#app = app;
  }

  /** What is known of a job at `now`; `own`: the mark of this phone's own beside its ledger. */
  of(head: JobHead, own: string, now: number): Glance | undefined {
    const mark = glanceMark(head, own, this.#app);
    const glance = this.#made.get(head.job);
    return (glance && keptGlance({ ...head, glance }, mark, now)) ?? keptGlance(head, mark, now);
  }

  made(head: JobHead, own: string, glance: Glance): Glance {
    this.#made.set(head.job, { ...glance, mark: glanceMark(head, own, this.#app) });
    return glance;
  }

  /** Once, when nothing has changed for a while. */
  later(work: () => Promise<void>): void {
    clearTimeout(this.#timer);
    this.#timer = setTimeout(() => void work(), QUIET_MS);
  }

  /** Beside the head that it was made of, and beside no other: another page may have read the job anew. */
  async keep({ job, hash }: JobHead): Promise<void> {
    const glance = this.#made.get(job);
    if (glance === undefined) return;
    try {
      const transaction = this.#database.transaction("heads", "readwrite");
      const head = await transaction.store.get(job);
      if (head !== undefined && head.hash === hash && head.glance?.mark !== glance.mark) await transaction.store.put({ ...head, glance });
      await transaction.done;
    } catch {
      // a phone without room starts more slowly, and loses nothing
    }
  }
}
