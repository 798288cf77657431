/** Answers of one route of one kind of status. */
export interface Counted {
  readonly route: string;
  /** 2 for 200 to 299, and so on. */
  readonly hundreds: number;
  readonly answers: number;
  /** Sum of their times, milliseconds. */
  readonly milliseconds: number;
}

/** What this instance of the edge has answered since it began; another instance counts for itself. */
export class Counters {
  readonly #rows = new Map<string, { route: string; hundreds: number; answers: number; milliseconds: number }>();

  /** The routes are a closed list, so that this stays as small as their number. */
  note(route: string, status: number, milliseconds: number): void {
    const hundreds = Math.floor(status / 100);
    const key = `${hundreds} ${route}`;
    const row = this.#rows.get(key) ?? { route, hundreds, answers: 0, milliseconds: 0 };
    row.answers += 1;
    row.milliseconds += milliseconds;
    this.#rows.set(key, row);
  }

  rows(): readonly Counted[] {
    return [...this.#rows.values()];
  }
}

export const counters = new Counters();
