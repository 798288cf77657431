import type { Role } from "#core/job/index.ts";

/** How a session began. */
export type Way = "link" | "passkey" | "code";

const MINUTE_MS = 60_000;
const HOUR_MS = 60 * MINUTE_MS;
const DAY_MS = 24 * HOUR_MS;

/**
 * How long a session lasts whatever happens, and how long without use, milliseconds. Office and owner: 12 hours (OWASP ASVS
 * 4.0.3, 3.3.2, level 2), and own: 4 without use. A crew's phone works for days without signal and must not stand signed out on
 * a site: a season, 60 days without use (own).
 */
export const lifeOf = (role: Role): { readonly ends: number; readonly idle: number } =>
  role === "crew" ? { ends: 200 * DAY_MS, idle: 60 * DAY_MS } : { ends: 12 * HOUR_MS, idle: 4 * HOUR_MS };

/** A session's token is replaced when it is this old. */
export const RENEW_MS = DAY_MS;
/** Requests that are on their way with the former token still come through. */
export const GRACE_MS = 2 * MINUTE_MS;
/** The last use is written down no oftener. */
export const TOUCH_MS = 5 * MINUTE_MS;

/** How long a link waits to be used: 7 days. */
export const LINK_LIFE_MS = 7 * DAY_MS;
/** How long a crew's code waits where nothing is said: 3 days (own). */
export const CODE_LIFE_DAYS = 3;
export const codeEnds = (now: number, days = CODE_LIFE_DAYS): number => now + days * DAY_MS;
/** A challenge waits for one touch of a finger. */
export const CHALLENGE_LIFE_MS = 5 * MINUTE_MS;
