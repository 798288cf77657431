import { describe, expect, test } from "vitest";
import { addressOf } from "#functions/edge/access/address.ts";
import { deviceOf } from "#functions/edge/access/device.ts";
import { noCookie, sessionCookie, tokenIn, tryCookie, tryIn } from "#functions/edge/cookie.ts";

const request = (url: string, headers: Readonly<Record<string, string>> = {}): Request => new Request(url, { headers });
const TOKEN = "A".repeat(42).concat("_");

describe("the session's cookie", () => {
  const [https, plain] = ["https://records.example.net/x", "http://localhost:8787/x"];

  test("over https is the whole host's alone, goes over https alone and is read by no script (RFC 6265bis 4.1)", () => {
    const cookie = `__Host-session=${TOKEN}`;
    expect(sessionCookie(TOKEN, request(https), 12 * 3_600_000)).toBe(
      `${cookie}; Max-Age=43200; HttpOnly; SameSite=Strict; Path=/; Secure`,
    );
    expect(noCookie(request(https))).toBe("__Host-session=; Max-Age=0; HttpOnly; SameSite=Strict; Path=/; Secure");
    expect(tokenIn(request(https, { cookie: `a=b; ${cookie}` }))).toBe(TOKEN);
    // a neighbour under the same name of a domain could set this one
    expect(tokenIn(request(https, { cookie: `session=${TOKEN}` }))).toBeUndefined();
  });

  test("on one's own machine goes without https", () => {
    expect(sessionCookie(TOKEN, request(plain), 1500)).toBe(`session=${TOKEN}; Max-Age=1; HttpOnly; SameSite=Strict; Path=/`);
    expect(tokenIn(request(plain, { cookie: `session=${TOKEN}` }))).toBe(TOKEN);
    expect(tokenIn(request(plain, { cookie: "session=../../etc" }))).toBeUndefined();
    expect(tokenIn(request(plain))).toBeUndefined();
  });

  test("and that of a try to sign in are two", () => {
    const cookie = tryCookie(TOKEN, request(plain), 300_000);
    expect(cookie).toBe(`try=${TOKEN}; Max-Age=300; HttpOnly; SameSite=Strict; Path=/`);
    expect([tryIn(request(plain, { cookie })), tokenIn(request(plain, { cookie }))]).toEqual([TOKEN, undefined]);
  });
});

describe("whence a request comes", () => {
  test.each([
    ["203.0.113.7", "203.0.113.7"],
    // the same first 64 bits (RFC 4291, 2.2 and 2.5.4), however they are written
    ["2001:db8:0:7:1:2:3:4", "2001:db8:0:7"],
    ["2001:0DB8::0007:ffff:ffff:ffff:ffff", "2001:db8:0:7"],
    ["2001:db8:0:7::", "2001:db8:0:7"],
    ["2001:db8::1", "2001:db8:0:0"],
    ["::1", "0:0:0:0"],
    ["", "unknown"],
    ["robin@example.org", "unknown"],
  ])("%s counts as %s", (given, counts) => {
    expect(addressOf(request("http://localhost/", { "cf-connecting-ip": given }))).toBe(counts);
  });
});

describe("what a session runs on", () => {
  // forms of RFC 9110 10.1.5 as the platforms send them; no version tells more than this
  test.each([
    ["Mozilla/5.0 (iPhone; CPU iPhone OS 18_0 like Mac OS X) Mobile/15E148", "phone"],
    ["Mozilla/5.0 (Linux; Android 15; K) Mobile", "phone"],
    ["Mozilla/5.0 (Linux; Android 15; K)", "tablet"],
    ["Mozilla/5.0 (iPad; CPU OS 18_0 like Mac OS X) Mobile/15E148", "tablet"],
    ["Mozilla/5.0 (Windows NT 10.0; Win64; x64)", "computer"],
    ["Mozilla/5.0 (X11; Linux x86_64)", "computer"],
    ["", "other"],
    ["curl/8", "other"],
  ])("%s: %s", (agent, device) => {
    expect(deviceOf(request("http://localhost/", { "user-agent": agent }))).toBe(device);
  });
});
