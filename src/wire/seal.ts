import * as z from "zod/mini";
import { later } from "./later.ts";
import { id, instant } from "./primitives.ts";

const base64Url = (digits: number) => z.string().check(z.regex(new RegExp(`^[A-Za-z0-9_-]{${digits}}$`), "base64url"));

/** A company's public keys: a JWK set (RFC 7517) of Ed25519 keys (RFC 8037) that says whose they are. */
export const keySet = later(() =>
  z.object({
    company: id,
    name: z.string(),
    keys: z.array(
      z.object({
        kty: z.literal("OKP"),
        crv: z.literal("Ed25519"),
        x: base64Url(43),
        kid: base64Url(43),
        alg: z.literal("EdDSA"),
        use: z.literal("sig"),
        made: instant,
        retired: z.optional(instant),
      }),
    ),
  }),
);
export type KeySet = z.infer<typeof keySet>;

export const keyMade = later(() => z.object({ key: base64Url(43), made: instant }));
export type KeyMade = z.infer<typeof keyMade>;
