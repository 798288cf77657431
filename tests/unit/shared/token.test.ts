import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { bearer, checkToken, issueToken, TOKEN_LIFE_MS } from "#functions/shared/token.ts";

const SECRET = "a secret";
const NOW = 1_777_000_000_000;
const MEDIA = { audience: "media", subject: "garden/ab" } as const;

describe("service tokens", () => {
  it("open one thing for one audience until their end", async () => {
    const token = await issueToken(SECRET, { ...MEDIA, expires: NOW + TOKEN_LIFE_MS });
    expect(await checkToken(SECRET, token, { ...MEDIA, now: NOW })).toEqual({ ok: true, value: null });
    expect(await checkToken(SECRET, token, { ...MEDIA, now: NOW + TOKEN_LIFE_MS - 1 })).toMatchObject({ ok: true });
  });

  it.each([
    ["ended", SECRET, { ...MEDIA, now: NOW + TOKEN_LIFE_MS }],
    ["signature", "another", { ...MEDIA, now: NOW }],
    ["signature", SECRET, { ...MEDIA, subject: "garden/ac", now: NOW }],
    ["signature", SECRET, { ...MEDIA, audience: "print" as const, now: NOW }],
    ["too-long", SECRET, { ...MEDIA, now: NOW - 2 * TOKEN_LIFE_MS }],
  ])("are refused: %s", async (why, secret, check) => {
    const token = await issueToken(SECRET, { ...MEDIA, expires: NOW + TOKEN_LIFE_MS });
    expect(await checkToken(secret, token, check)).toMatchObject({ ok: false, refusal: { code: "service-token", figures: { why } } });
  });

  it("do not run together at their seams", async () => {
    const token = await issueToken(SECRET, { audience: "media", subject: 'a","b', expires: NOW + 1 });
    expect(await checkToken(SECRET, token, { audience: "media", subject: "a", now: NOW })).toMatchObject({ ok: false });
  });

  it("are the HMAC of RFC 2104 over the text, as Node's own crypto makes it", async () => {
    const { createHmac } = await import("node:crypto");
    const text = JSON.stringify(["asburied service token", 1, "media", "garden/ab", NOW]);
    const mac = createHmac("sha256", SECRET).update(text).digest("base64url");
    expect(await issueToken(SECRET, { ...MEDIA, expires: NOW })).toBe(`1.${NOW}.${mac}`);
  });

  it("refuse any other text without a throw", async () => {
    await fc.assert(
      fc.asyncProperty(
        fc.oneof(fc.string(), fc.constantFrom(undefined, null, "", "1..", `1.${NOW + 1}.${"A".repeat(43)}`)),
        async (text) => {
          expect(await checkToken(SECRET, text, { ...MEDIA, now: NOW })).toMatchObject({ ok: false, refusal: { code: "service-token" } });
        },
      ),
    );
  });

  it("are taken from the header", () => {
    expect(bearer("Bearer abc")).toBe("abc");
    expect(bearer("bearer abc")).toBe("abc");
    for (const header of [undefined, null, "", "Bearer", "Basic abc", "Bearer a b"]) expect(bearer(header)).toBeUndefined();
  });
});
