import { type Outcome, ok, refuse } from "#core/outcome/index.ts";

export type Audience = "media" | "print";

/** How long a service token is good, in milliseconds. */
export const TOKEN_LIFE_MS = 60_000;

export interface TokenFor {
  readonly audience: Audience;
  /** The one thing it opens: `company/sha` for a photo, `sha256:…` of the body for a record. */
  readonly subject: string;
  /** Instant in milliseconds. */
  readonly expires: number;
}

/**
 * A token by which one function lets another do one thing for a minute: `1.expires.mac`, the mac an HMAC-SHA-256 over
 * audience, subject and end. The receiver knows audience and subject itself, so a token for another never fits.
 */
export async function issueToken(secret: string, { audience, subject, expires }: TokenFor): Promise<string> {
  const mac = await crypto.subtle.sign("HMAC", await keyFrom(secret, "sign"), signedText(audience, subject, expires));
  return `1.${expires}.${toBase64Url(new Uint8Array(mac))}`;
}

export interface TokenCheck {
  readonly audience: Audience;
  readonly subject: string;
  /** Now, in milliseconds. */
  readonly now: number;
}

/** Refused as `service-token` with the reason in its figures. The comparison is WebCrypto's, in constant time. */
export async function checkToken(
  secret: string,
  token: string | null | undefined,
  { audience, subject, now }: TokenCheck,
): Promise<Outcome<null>> {
  const no = (why: string) => refuse("service-token", "authorization", { why });
  if (!token) return no("missing");
  const parts = /^1\.(\d{1,15})\.([A-Za-z0-9_-]{43})$/.exec(token);
  if (!parts) return no("shape");
  const expires = Number(parts[1]);
  const mac = fromBase64Url(parts[2] as string);
  const fits = await crypto.subtle.verify("HMAC", await keyFrom(secret, "verify"), mac, signedText(audience, subject, expires));
  if (!fits) return no("signature");
  if (expires <= now) return no("ended");
  // Twice the life leaves a minute for two clocks that disagree, and stops a token that somebody made to last.
  if (expires > now + 2 * TOKEN_LIFE_MS) return no("too-long");
  return ok(null);
}

/** The token of an `Authorization: Bearer …` header. */
export const bearer = (header: string | null | undefined): string | undefined => /^Bearer ([^\s]+)$/i.exec(header ?? "")?.[1];

const keyFrom = (secret: string, use: "sign" | "verify") =>
  crypto.subtle.importKey("raw", new TextEncoder().encode(secret), { name: "HMAC", hash: "SHA-256" }, false, [use]);

const signedText = (audience: string, subject: string, expires: number) =>
  new TextEncoder().encode(JSON.stringify(["asburied service token", 1, audience, subject, expires]));

const toBase64Url = (bytes: Uint8Array): string =>
  btoa(String.fromCharCode(...bytes))
    .replaceAll("+", "-")
    .replaceAll("/", "_")
    .replaceAll("=", "");

const fromBase64Url = (text: string) => Uint8Array.from(atob(text.replaceAll("-", "+").replaceAll("_", "/")), (c) => c.charCodeAt(0));
