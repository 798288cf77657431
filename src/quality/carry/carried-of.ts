import type { Carried, GroupCarried } from "../carried.ts";
import type { PictureObserved, ReadingObserved } from "../observation.ts";
import { rimsRead } from "./corners.ts";
import { onNominal } from "./heaping.ts";
import { WITHIN_MS } from "./timing.ts";

type Counted = { -readonly [K in keyof GroupCarried]: GroupCarried[K] };

function groupsOf(readings: readonly ReadingObserved[]): readonly GroupCarried[] {
  const groups = new Map<string, Counted>();
  const last = new Map<string, ReadingObserved>();
  for (const reading of [...readings].sort((a, b) => a.at - b.at)) {
    const { at, phone, item, tag, step, person, afterCovering } = reading;
    const key = `${step}\n${person}`;
    const none = { step, person, readings: 0, followed: 0, within: 0, afterCovering: 0, nominal: 0, onNominal: 0, most: 0 };
    const own = groups.get(key) ?? none;
    groups.set(key, own);
    own.readings += 1;
    if (afterCovering) own.afterCovering += 1;
    const before = last.get(phone);
    if (before !== undefined && (before.item !== item || before.tag !== tag)) {
      own.followed += 1;
      if (at - before.at < WITHIN_MS) own.within += 1;
    }
    last.set(phone, reading);
    const stands = onNominal(reading);
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
