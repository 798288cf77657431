import { Miniflare } from "miniflare";
import type { Likeness } from "#core/photo/index.ts";
import { bandOf } from "#core/photo/waves.ts";
import { migrate } from "#infra/local/migrations.ts";
import { numbers } from "./spoilt.ts";

// By a variable's name: the edge is written for another platform's types than the tests.
const adapterFile = "#functions/edge/adapters/likenesses.ts";
interface Looks {
  alike(company: string, sha256: string, likeness: Likeness): Promise<readonly { sha256: string; distance: number; turn: number }[]>;
}

export interface ManyLooks {
  readonly looks: Looks;
  /** Adds photos to the company until it has so many. */
  fill(company: string, count: number): Promise<void>;
  /** A copy of the nth photo of the company with some of its unsure bits the other way round, and the hash that it has. */
  copyOf(company: string, n: number, seed: number): Promise<{ readonly sha256: string; readonly likeness: Likeness }>;
  stop(): Promise<void>;
}

/**
 * Invented hashes: multiples of large odd numbers, cut to 22, 21 and 21 bits. In four bits of each band a one comes only
 * every fourth time, as light from above makes some waves lie one way more often.
 */
const UNEVEN = 0b1000_0100_0010_0001;
const mixed = (factor: number, bits: number): string => {
  const all = 2 ** bits - 1;
  return `((n * ${factor} >> 9) & ${all} & ((n * ${factor + 62} >> 11) | ${all - UNEVEN}))`;
};
const FILL = `INSERT INTO photo_look (company, sha256, place, first, second, third)
  WITH RECURSIVE counted (n) AS (SELECT ?2 UNION ALL SELECT n + 1 FROM counted WHERE n + 1 < ?3)
  SELECT ?1, printf('%064x', n), 0, ${mixed(2_654_435_761, 22)}, ${mixed(2_246_822_519, 21)}, ${mixed(3_266_489_917, 21)} FROM counted`;
const AT_ONCE = 50_000;

/** The hash that is cut into these bands, a band's first bit the highest. */
function hashOfBands([first, second, third]: readonly [number, number, number]): string {
  const bits = [first.toString(2).padStart(22, "0"), second.toString(2).padStart(21, "0"), third.toString(2).padStart(21, "0")];
  const next = [0, 0, 0];
  const text = bandOf
    .map((band) => {
      const at = next[band] as number;
      next[band] = at + 1;
      return (bits[band] as string)[at];
    })
    .join("");
  return BigInt(`0b${text}`).toString(16).padStart(16, "0");
}

/** One batch for each request; the database's own proxy would take a quarter of a second for every look-up. */
const SCRIPT = `export default { async fetch(request, { DB }) {
  const asked = await request.json();
  return Response.json(await DB.batch(asked.map(({ sql, values }) => DB.prepare(sql).bind(...values))));
} }`;

interface Bound {
  readonly sql: string;
  readonly values: readonly unknown[];
  bind(...values: unknown[]): Bound;
  run(): Promise<unknown>;
  all(): Promise<{ results: unknown[] }>;
}

/** Miniflare's D1 as far as the look-ups and the migrations ask it. */
function databaseOf(miniflare: Miniflare) {
  const batch = async (list: readonly Bound[]): Promise<{ results: unknown[] }[]> => {
    const body = JSON.stringify(list.map(({ sql, values }) => ({ sql, values })));
    const answer = await miniflare.dispatchFetch("http://looks/", { method: "POST", body });
    if (!answer.ok) throw new Error(await answer.text());
    return (await answer.json()) as { results: unknown[] }[];
  };
  const bound = (sql: string, values: readonly unknown[]): Bound => {
    const all = async () => (await batch([bound(sql, values)]))[0] as { results: unknown[] };
    return { sql, values, bind: (...given) => bound(sql, given), run: all, all };
  };
  return { prepare: (sql: string) => bound(sql, []), batch };
}

/** Miniflare's D1 on its own, built by the migrations. */
export async function manyLooks(): Promise<ManyLooks> {
  const miniflare = new Miniflare({ modules: true, script: SCRIPT, d1Databases: { DB: "looks" } });
  const database = databaseOf(miniflare);
  await migrate(database as unknown as Parameters<typeof migrate>[0], "infra/migrations", "2026-05-04T12:00:00Z");
  const { likenessesIn } = (await import(adapterFile)) as { likenessesIn: (database: unknown) => Looks };
  return {
    looks: likenessesIn(database),
    async fill(company, count) {
      for (let from = 0; from < count; from += AT_ONCE)
        await database
          .prepare(FILL)
          .bind(company, from, Math.min(count, from + AT_ONCE))
          .run();
    },
    async copyOf(company, n, seed) {
      const sha256 = n.toString(16).padStart(64, "0");
      const sql = "SELECT first, second, third FROM photo_look WHERE company = ? AND sha256 = ?";
      const { results } = await database.prepare(sql).bind(company, sha256).all();
      const row = results[0] as { first: number; second: number; third: number };
      const next = numbers(seed);
      // Four bits of each band are unsure; one in each band has changed.
      const unsure = [22, 21, 21].map((bits) => Array.from({ length: 4 }, (_, k) => 1 << Math.floor(((k + next()) * bits) / 4.2)));
      const bands = [row.first, row.second, row.third].map((band, k) => band ^ (unsure[k]?.[1] as number));
      const masks = unsure.map((list) => list.reduce((sum, bit) => sum | bit, 0));
      const likeness: Likeness = {
        hashes: [hashOfBands(bands as [number, number, number])],
        unsure: [hashOfBands(masks as [number, number, number])],
        abstains: null,
        strength: 5_000,
        layout: 5_000,
      };
      return { sha256, likeness };
    },
    stop: () => miniflare.dispose(),
  };
}

export const median = (list: readonly number[]): number => list.toSorted((a, b) => a - b)[list.length >> 1] as number;

/** Milliseconds of look-ups in either company by turns, and how many found the photo that they are a copy of. */
export async function timed(many: ManyLooks, companies: readonly { readonly company: string; readonly count: number }[], tries: number) {
  const times = companies.map(() => [] as number[]);
  let found = 0;
  for (let i = 0; i < tries; i += 1) {
    for (const [k, { company, count }] of companies.entries()) {
      const { sha256, likeness } = await many.copyOf(company, Math.floor(((i + 0.5) * count) / tries), i + 1);
      const began = performance.now();
      const alike = await many.looks.alike(company, "f".repeat(64), likeness);
      times[k]?.push(performance.now() - began);
      if (alike.some((one) => one.sha256 === sha256 && one.distance === 3)) found += 1;
    }
  }
  return { medians: times.map(median), found, asked: tries * companies.length };
}
