import fc from "fast-check";
import type { Operation } from "#core/wire/index.ts";
import { damagedValue, hostileSigns } from "./damage.ts";
import { type Pools, valuesOf } from "./from-schema.ts";

/** One request of a fuzz: for a route of the table, from its own shape, then damaged. */
export interface HostileRequest {
  readonly route: Operation;
  readonly path: string;
  readonly headers: Readonly<Record<string, string>>;
  readonly body: Uint8Array<ArrayBuffer> | undefined;
  /** Which of the route's roles sends it. */
  readonly role: number;
}

const unitless = [
  "",
  "x",
  "../..",
  "%2e%2e%2f",
  "null",
  "undefined",
  "0",
  "-1",
  "1e999",
  "a".repeat(400),
  "__proto__",
  "constructor",
  ...hostileSigns,
];
const hostilePart = fc.oneof(fc.constantFrom(...unitless, "f".repeat(64)), fc.string({ unit: "binary", maxLength: 12 }));
const queries = ["job", "days", "look", "sheet", "table", "parts", "photos", "month", "from", "to", "zone", "language", "limit", "after"];

/** Text in an address: half a pair cannot stand there at all. */
const inAddress = (text: string): string => encodeURIComponent(text.toWellFormed());

const filled = (path: string, ids: Readonly<Record<string, readonly string[]>>, known: number): fc.Arbitrary<string> => {
  const names = [...path.matchAll(/:([a-z0-9]+)/g)].map((match) => match[1] ?? "");
  const parts = names.map((name) => {
    const own = ids[name] ?? [];
    if (own.length === 0 || known === 0) return hostilePart.map(inAddress);
    return fc.oneof({ weight: known, arbitrary: fc.constantFrom(...own) }, { weight: 1, arbitrary: hostilePart.map(inAddress) });
  });
  return fc.tuple(...parts).map((values) => {
    let at = 0;
    return path.replaceAll(/:[a-z0-9]+/g, () => values[at++] ?? "");
  });
};

const query: fc.Arbitrary<string> = fc
  .array(fc.tuple(fc.constantFrom(...queries), hostilePart), { maxLength: 3 })
  .map((pairs) => (pairs.length === 0 ? "" : `?${pairs.map(([name, value]) => `${name}=${inAddress(value)}`).join("&")}`));

const encoded = (text: string): Uint8Array<ArrayBuffer> => Uint8Array.from(Buffer.from(text));
const beginnings = ["", "ffd8ffe0", "89504e470d0a1a0a", "255044462d312e37", "504b0304", "3c737667", "fffe", "00000018667479706d696631"].map(
  (hex) => Buffer.from(hex, "hex"),
);
const anyBytes = fc
  .tuple(fc.constantFrom(...beginnings), fc.uint8Array({ maxLength: 300 }))
  .map(([start, rest]) => Uint8Array.from(Buffer.concat([start, rest])));
/** What is no JSON, or JSON that fools a reader. */
const noJson = fc.constantFrom(
  "",
  "{",
  "[",
  "nul",
  '{"a":1}{',
  "\ufeff{}",
  '"\\ud800"',
  "[".repeat(100_000),
  `{"a":${"[".repeat(50_000)}${"]".repeat(50_000)}}`,
  '{"__proto__":{"x":1}}',
  "1e999",
  "-0",
  "\u0000",
);

function bodyOf(route: Operation, pools: Pools): fc.Arbitrary<Uint8Array<ArrayBuffer> | undefined> {
  if (route.method === "GET") return fc.constant(undefined);
  if (route.takes === undefined) return fc.option(noJson.map(encoded), { nil: undefined });
  if (route.takes === "bytes") return anyBytes;
  const good = valuesOf(route.takes, pools);
  return fc.oneof(
    { weight: 5, arbitrary: good.map((value) => encoded(JSON.stringify(value))) },
    {
      weight: 5,
      arbitrary: fc
        .tuple(good, fc.nat(2))
        .chain(([value, most]) => damagedValue([value], most + 1))
        .map((value) => encoded(JSON.stringify(value))),
    },
    { weight: 1, arbitrary: noJson.map(encoded) },
    { weight: 1, arbitrary: anyBytes },
  );
}

const printable = /^[\x20-\x7e]*$/;
const headers = (route: Operation): fc.Arbitrary<Record<string, string>> =>
  fc.record(
    {
      "content-type": fc.oneof(
        { weight: 12, arbitrary: fc.constant(route.takes === "bytes" ? "application/octet-stream" : "application/json") },
        {
          weight: 1,
          arbitrary: fc.constantFrom("text/plain", "application/json; charset=utf-16", "multipart/form-data", "", "application/jsonx"),
        },
      ),
      "if-match": fc.constantFrom('"x"', `"${"a".repeat(64)}"`, "*", 'W/""'),
      "user-agent": fc.string({ maxLength: 300 }).filter((text) => printable.test(text)),
      "accept-language": fc.constantFrom("es", "xx", "*;q=9"),
    },
    { requiredKeys: ["content-type"] },
  );

/**
 * Requests over all these routes, each as often as another. `ids`: what the names in an address may stand for; `apart`: routes that
 * are only asked with ids that nobody has, since what they do would end the fuzz.
 */
export function hostileRequests(
  routes: readonly Operation[],
  ids: Readonly<Record<string, readonly string[]>>,
  pools: Pools,
  apart: (route: Operation) => boolean,
): fc.Arbitrary<HostileRequest> {
  const each = routes.map((route) =>
    fc
      .tuple(filled(route.path, ids, apart(route) ? 0 : 5), query, headers(route), bodyOf(route, pools), fc.nat(2))
      .map(([path, asked, own, body, role]): HostileRequest => ({ route, path: `${path}${asked}`, headers: own, body, role })),
  );
  return fc.oneof(...each);
}
