import type { ShardName } from "./shards.ts";

export interface Placed {
  readonly company: string;
  readonly shard: ShardName;
  readonly version: number;
}

/** How long an isolate goes by a place without asking. A place that has been left refuses by itself, so this bounds work, not harm. */
const PLACE_MS = 60_000;
const MOST_DOORS = 20_000;
const MOST_PLACES = 5_000;

function bounded<T>(map: Map<string, T>, key: string, value: T, most: number): void {
  map.delete(key);
  map.set(key, value);
  for (const oldest of map.keys()) {
    if (map.size <= most) break;
    map.delete(oldest);
  }
}

/** What this isolate was told by one directory. To which company a key leads never changes; where it lies does. */
export class Remembered {
  readonly #doors = new Map<string, string>();
  readonly #places = new Map<string, Placed & { readonly until: number }>();

  companyOf = (key: string): string | undefined => this.#doors.get(key);

  door(key: string, company: string): void {
    bounded(this.#doors, key, company, MOST_DOORS);
  }

  placeOf(company: string, now: number): Placed | undefined {
    const placed = this.#places.get(company);
    return placed !== undefined && now < placed.until ? placed : undefined;
  }

  /** An answer that was long on its way does not bring an older place back. */
  place(placed: Placed, now: number): void {
    const before = this.#places.get(placed.company);
    if (before !== undefined && before.version > placed.version) return;
    bounded(this.#places, placed.company, { ...placed, until: now + PLACE_MS }, MOST_PLACES);
  }
}

const all = new WeakMap<D1Database, Remembered>();

export function remembered(directory: D1Database): Remembered {
  const known = all.get(directory) ?? new Remembered();
  all.set(directory, known);
  return known;
}
