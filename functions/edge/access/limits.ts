import { type Outcome, ok, type Refusal, type RefusalCode, refuse } from "#core/outcome/index.ts";
import type { Limit } from "../adapters/tries.ts";
import type { Services } from "../services.ts";
import { addressOf } from "./address.ts";

const MINUTE_MS = 60_000;
const HOUR_MS = 60 * MINUTE_MS;

const limit = (name: string, most: number, within: number): Limit => ({ name, most, within });

/**
 * How often each door may be tried; own figures. Where the secret has 256 bits or is a signature, what did not come in is
 * counted and what comes in always passes: a flood from beside the rightful one keeps nobody out. A crew's typed code has 40
 * bits: each try counts before it is looked at, by address and for everybody together (at 2,000 an hour against a thousand
 * codes that wait, a hit once in 57 years); the square picture holds 256 bits and goes on working.
 */
export const limits = {
  link: limit("link", 30, 10 * MINUTE_MS),
  session: limit("session", 300, 10 * MINUTE_MS),
  operator: limit("operator", 60, 10 * MINUTE_MS),
  othersLink: limit("others", 30, 10 * MINUTE_MS),
  released: limit("released", 30, 10 * MINUTE_MS),
  /** By link: what is read of one released record, a picture at a time, or of one page for others. */
  opened: limit("opened", 2000, 10 * MINUTE_MS),
  challenges: limit("challenges", 60, 10 * MINUTE_MS),
  signIn: limit("sign-in", 20, 10 * MINUTE_MS),
  /** By account: signatures that were not right for one passkey. */
  passkey: limit("passkey", 10, 10 * MINUTE_MS),
  joining: limit("joining", 10, 10 * MINUTE_MS),
  allJoining: limit("all joining", 2000, HOUR_MS),
  picture: limit("join picture", 30, 10 * MINUTE_MS),
  /** By account: codes, links and passkeys that somebody makes. */
  making: limit("making", 600, HOUR_MS),
} as const;

const tooMany = (milliseconds: number): Refusal => {
  const seconds = Math.ceil(milliseconds / 1000);
  return { code: "too-many-tries", place: "door", figures: { seconds, minutes: Math.ceil(seconds / 60) } };
};

/** Counts a try before it is looked at. */
export async function counted(services: Services, of: Limit, who: string): Promise<Outcome<undefined>> {
  const wait = await services.tries.take(of, who, services.clock());
  return wait === undefined ? ok(undefined) : { ok: false, refusal: tooMany(wait) };
}

/** The refusal of what did not come in, or that of one try too many, counted by the address that it came from. */
export async function notIn(
  services: Services,
  of: Limit,
  request: Request,
  code: RefusalCode,
  place: string,
): Promise<{ readonly ok: false; readonly refusal: Refusal }> {
  const wait = await services.tries.take(of, addressOf(request), services.clock());
  return wait === undefined ? refuse(code, place) : { ok: false, refusal: tooMany(wait) };
}
