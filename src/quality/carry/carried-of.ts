import type { Carried, GroupCarried } from "../carried.ts";
import type { PictureObserved, ReadingObserved } from "../observation.ts";
import { rimsRead } from "./corners.ts";
import { knownChances, onNominal } from "./heaping.ts";
import { WITHIN_MS } from "./timing.ts";

type Counted = { -readonly [K in keyof GroupCarried]: GroupCarried[K] };

function groupsOf(readings: readonly ReadingObserved[]): readonly GroupCarried[] {
  const groups = new Map<string, Counted>();
  // readings come in the order of the work: most are of the group of the one before
  let own: Counted | undefined;
  const chanceOf = knownChances();
  const last = new Map<string, ReadingObserved>();
  for (const reading of [...readings].sort((a, b) => a.at - b.at)) {
    const { at, phone, item, tag, step, person, afterCovering } = reading;
    if (own?.step !== step || own.person !== person) {
      const key = `${step}\n${person}`;
      own = groups.get(key) ?? { step, person, readings: 0, followed: 0, within: 0, afterCovering: 0, nominal: 0, onNominal: 0, most: 0 };
      groups.set(key, own);
    }
    own.readings += 1;
    if (afterCovering) own.afterCovering += 1;
    const before = last.get(phone);
    if (before !== undefined && (before.item !== item || before.tag !== tag)) {
      own.followed += 1;
      if (at - before.at < WITHIN_MS) own.within += 1;
    }
    last.set(phone, reading);
    const stands = onNominal(reading, chanceOf);
    if (stands === undefined) continue;
    own.nominal += 1;
    if (stands.isHit) own.onNominal += 1;
    own.most += stands.chance;
  }
  return [...groups.values()];
}

/** Counted and cut down to what is asked of it. */
export const carriedOf = (readings: readonly ReadingObserved[], pictures: readonly PictureObserved[]): Carried => ({
  groups: groupsOf(readings),
  rims: rimsRead(readings),
  pictures: pictures.map(({ step, photo, person, likeness }) => ({ step, photo, person, ...(likeness === undefined ? {} : { likeness }) })),
});
