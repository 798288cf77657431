import { seeded } from "../seeded.ts";

/** Everything that a round may break. */
export const faultNames = [
  "kill edge",
  "kill workerd",
  "kill store",
  "kill media",
  "kill print",
  "freeze workerd",
  "freeze store",
  "freeze media",
  "disk full: store",
  "disk full: database",
  "store refuses",
  "store slow",
  "store silent",
  "store cuts what it is sent",
  "store shortens what it is sent",
  "store says yes, keeps nothing",
  "store cuts its answer",
  "store shortens its answer",
  "queue twice",
  "queue out of order",
  "queue lost",
  "database fails before",
  "database fails in the middle",
  "database loses its answer",
  "edge's clock jumps",
  "phones' clocks jump",
] as const;
export type FaultName = (typeof faultNames)[number];

/** One thing that breaks in a round. Times in milliseconds from the round's beginning. */
export interface Fault {
  readonly name: FaultName;
  readonly at: number;
  readonly lasts: number;
  /** 0 to 1, for whatever the fault needs a number for. */
  readonly share: number;
}

export interface Round {
  readonly number: number;
  readonly faults: readonly Fault[];
  /** How many entries each phone makes. */
  readonly entries: readonly number[];
  /** Photos that are taken in it, by the phones of these numbers; `damaged` counts those at the end that are. */
  readonly photographers: readonly number[];
  readonly damaged: number;
  /** Whether two phones take the very same picture. */
  readonly shared: boolean;
  /** Whether the office issues a record. */
  readonly issues: boolean;
}

const of = (seed: number, round: number) => seeded(Math.imul(seed, 0x9e3779b1) ^ Math.imul(round + 1, 0x85ebca6b));

/** The names in an order of the seed's own; each pass through them has another one, so that none is left out for long. */
function deck(seed: number, pass: number): readonly FaultName[] {
  const chance = of(seed, -2 - pass);
  const left = [...faultNames];
  return faultNames.map(() => left.splice(chance.whole(0, left.length - 1), 1)[0] as FaultName);
}

const many = (seed: number, round: number): number => of(seed, round).whole(1, 2);

/** What is drawn for a round, from 1: the same for the same seed, whichever rounds are run. */
export function roundOf(seed: number, number: number, phones: number): Round {
  let before = 0;
  for (let round = 1; round < number; round += 1) before += many(seed, round);
  const chance = of(seed, number);
  const count = chance.whole(1, 2);
  const faults = Array.from({ length: count }, (_, i): Fault => {
    const card = before + i;
    const name = deck(seed, Math.floor(card / faultNames.length))[card % faultNames.length] as FaultName;
    // what lasts begins early, so that much is on its way while it does
    const lasting = !name.startsWith("kill");
    return { name, at: chance.whole(0, lasting ? 350 : 900), lasts: chance.whole(400, 1_000), share: chance.share(0.05, 0.95) };
  });
  const photographers = Array.from({ length: chance.whole(4, 7) }, () => chance.whole(0, phones - 1));
  return {
    number,
    faults,
    entries: Array.from({ length: phones }, () => chance.whole(0, 2)),
    photographers,
    damaged: chance.whole(0, 3) === 0 ? 1 : 0,
    shared: chance.whole(0, 4) === 0,
    issues: chance.whole(0, 7) === 0,
  };
}
