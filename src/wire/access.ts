import * as z from "zod/mini";
import { later } from "./later.ts";
import { id, instant, json, role, text } from "./primitives.ts";

/** What the browser is asked with, as WebAuthn's JSON (W3C Web Authentication Level 3, 5.1). `origin`: the address that passkeys belong to. */
export const passkeyAsked = later(() => z.object({ origin: z.string(), options: z.record(z.string(), json) }));
export type PasskeyAsked = z.infer<typeof passkeyAsked>;

/** What an authenticator answered, as WebAuthn's JSON; its own reader judges what is inside. */
const credential = later(() =>
  z.object({
    id: z.string().check(z.regex(/^[A-Za-z0-9_-]{1,1400}$/, "credential")),
    rawId: z.string(),
    type: z.literal("public-key"),
    response: z.record(z.string(), json),
    clientExtensionResults: z.record(z.string(), json),
    authenticatorAttachment: z.optional(z.nullable(z.string())),
  }),
);

/** A passkey that was made on a device, with the name that its owner gives it. */
export const newPasskey = later(() => z.strictObject({ name: text(60), credential }));
export type NewPasskey = z.infer<typeof newPasskey>;
export const passkeyMade = later(() => z.object({ passkey: id }));
export type PasskeyMade = z.infer<typeof passkeyMade>;

export const passkeySignIn = later(() => z.strictObject({ credential }));

/** The company owner who stands before a closed door. */
export const ownerRecovery = later(() => z.strictObject({ person: id }));

/** A company is to lie in another shard; `remove`: what it left behind goes. */
export const moveAsked = later(() =>
  z.strictObject({
    to: z.string().check(z.regex(/^DB(_[0-9]{1,3})?$/, "shard")),
    remove: z._default(z.boolean(), false),
  }),
);
/** How far it has come, asked again until it is `moved`, or `there` once nothing of it is left behind. Instants of the switch in milliseconds. */
export const moveStand = later(() =>
  z.object({
    stage: z.enum(["clearing", "copying", "catching up", "closed", "moved", "removing", "there"]),
    rows: z.optional(z.number()),
    closed: z.optional(instant),
    switched: z.optional(instant),
  }),
);
export type MoveStand = z.infer<typeof moveStand>;

/** How a session began. */
export const way = later(() => z.enum(["link", "passkey", "code"]));

/** By which passkeys and on which devices one person is let in. */
export const access = later(() =>
  z.object({
    person: id,
    role,
    passkeys: z.array(
      z.object({
        passkey: id,
        name: z.string(),
        made: instant,
        last: z.optional(instant),
        /** Kept by more than one device of its owner. */
        synced: z.boolean(),
      }),
    ),
    sessions: z.array(
      z.object({
        session: id,
        device: z.enum(["phone", "tablet", "computer", "other"]),
        way,
        /** The passkey that it was begun with. */
        passkey: z.optional(id),
        began: instant,
        last: instant,
        ends: instant,
        /** The one that asks. */
        here: z.boolean(),
      }),
    ),
  }),
);
export type Access = z.infer<typeof access>;

/** Days for which a code waits to be used. */
export const joinCodeAsked = later(() => z.strictObject({ days: z.optional(z.int().check(z.gte(1), z.lte(14))) }));
/** Digits and picture are told once: nobody can read them again. `picture`: the path that the square picture holds. */
export const joinCodeMade = later(() => z.object({ code: id, digits: z.string(), picture: z.string(), ends: instant }));
export type JoinCodeMade = z.infer<typeof joinCodeMade>;

export const joinCodes = later(() =>
  z.object({
    codes: z.array(
      z.object({
        code: id,
        person: z.string(),
        made: instant,
        ends: instant,
        is: z.enum(["open", "used", "withdrawn", "over"]),
        used: z.optional(instant),
      }),
    ),
  }),
);
export type JoinCodes = z.infer<typeof joinCodes>;

/** Twelve digits as somebody types them, with spaces or hyphens between; or what the square picture held. */
export const joining = later(() =>
  z.union([
    z.strictObject({ digits: z.string().check(z.regex(/^[0-9\s-]{12,40}$/, "digits")) }),
    z.strictObject({ token: z.string().check(z.regex(/^[A-Za-z0-9_-]{43}$/, "token")) }),
  ]),
);
export type Joining = z.infer<typeof joining>;
