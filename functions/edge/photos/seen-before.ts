import { type PhotoUse, type SeenHow, type Turn, undone, weightOf } from "#core/photo/index.ts";
import type { SeenBefore } from "#core/wire/index.ts";
import type { SeenPair } from "../adapters/seen-before.ts";
import type { Services } from "../services.ts";

interface Other {
  readonly sha256: string;
  readonly how: SeenHow;
  readonly distance: number;
  readonly turn: Turn;
}

/**
 * Compares a photo with all others of its company and keeps what it was seen as before. Its own likeness is kept before
 * it asks, so that of two that come at once at least one finds the other; a pair is kept once, whoever finds it.
 */
export async function compare(services: Services, company: string, sha256: string): Promise<void> {
  const photo = await services.photos.get(company, sha256);
  const { pixels, likeness } = photo?.facts ?? {};
  const same = pixels ? await services.likenesses.samePixels(company, sha256, pixels) : [];
  const alike = likeness ? await services.likenesses.alike(company, sha256, likeness) : [];
  const others: readonly Other[] = [
    ...same.map((other) => ({ sha256: other, how: "pixels", distance: 0, turn: 1 }) as const),
    ...alike.filter((one) => !same.includes(one.sha256)).map((one) => ({ ...one, how: "likeness" }) as const),
  ];
  if (others.length > 0) {
    const stored = await services.seenPairs.stored(company, [sha256, ...others.map((one) => one.sha256)]);
    await services.seenPairs.keep(
      company,
      others.map((other) => pairOf(sha256, other, stored, services.clock())),
    );
  }
  await services.owed.paid({ kind: "compare", company, ref: sha256 });
}

function pairOf(sha256: string, other: Other, stored: ReadonlyMap<string, number>, found: number): SeenPair {
  const [mine, theirs] = [stored.get(sha256) ?? 0, stored.get(other.sha256) ?? 0];
  const later = mine > theirs || (mine === theirs && sha256 > other.sha256);
  const { how, distance, turn } = other;
  return later
    ? { sha256, before: other.sha256, how, distance, turn, found }
    : { sha256: other.sha256, before: sha256, how, distance, turn: undone(turn), found };
}

/** Pairs that are listed at a time. */
const MOST = 200;

/** The newest pairs of the company, or of one job, with who names both. What a pair weighs is judged when it is asked for. */
export async function listed(services: Services, company: string, job?: string): Promise<readonly SeenBefore[]> {
  const pairs = await services.seenPairs.newest(company, job, MOST);
  const uses = await services.seenPairs.uses(company, [...new Set(pairs.flatMap(({ sha256, before }) => [sha256, before]))]);
  const of = (sha256: string): readonly PhotoUse[] => uses.get(sha256) ?? [];
  return pairs.map(({ sha256, before, how, distance, turn, found }) => ({
    photo: { sha256, usedIn: [...of(sha256)] },
    before: { sha256: before, usedIn: [...of(before)] },
    how,
    distance,
    turn,
    weight: weightOf(sha256 === before ? of(sha256) : [...of(sha256), ...of(before)]),
    found,
  }));
}
