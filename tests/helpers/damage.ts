import fc from "fast-check";

/** Good inputs, damaged: what a fuzz of a reader begins with, since pure chance hardly gets past its first line. */

/** Signs that have fooled readers: nothing, half of a pair, marks that turn the line or show nothing, digits of other scripts. */
export const hostileSigns: readonly string[] = [
  "\u0000",
  "\u001b",
  "\u007f",
  "\u0085",
  "\u00a0",
  "\u00ad",
  "\u0300",
  "\u0301".repeat(40),
  "\u061c",
  "\u0663",
  "\u200b",
  "\u200d",
  "\u200e",
  "\u202a",
  "\u202e",
  "\u2028",
  "\u2029",
  "\u2066",
  "\ud800",
  "\udfff",
  "\ue000",
  "\ufeff",
  "\ufe0f",
  "\uff11",
  "\uff1d",
  "\ufffd",
  "\u{1f600}",
  "\u{e0041}",
  "\u{10ffff}",
  "\r\n",
  "\n",
  "\t",
  "\\",
  "/",
  "../",
  "%00",
  "<script>",
  "{{",
  "${",
  "'",
  '"',
  "`",
  ";",
  ",",
  "=1+1",
  "@",
  "-",
  "−",
  "½",
  "e9",
  "1e999",
  "0x10",
  "NaN",
  "Infinity",
  "00000000000000000000000000000000000000000000000000",
  "99999999999999999999999",
];

const sign = fc.oneof(
  { weight: 3, arbitrary: fc.constantFrom(...hostileSigns) },
  { weight: 1, arbitrary: fc.string({ unit: "binary", maxLength: 3 }) },
);
const share = fc.double({ min: 0, max: 1, maxExcluded: true, noNaN: true });

type TextChange =
  | { readonly how: "cut"; readonly at: number; readonly to: number }
  | { readonly how: "put"; readonly at: number; readonly text: string }
  | { readonly how: "over"; readonly at: number; readonly text: string }
  | { readonly how: "again"; readonly at: number; readonly to: number }
  | { readonly how: "case" };

function textChanged(text: string, change: TextChange): string {
  if (change.how === "case") return text === text.toUpperCase() ? text.toLowerCase() : text.toUpperCase();
  const at = Math.floor(change.at * (text.length + 1));
  if (change.how === "put") return text.slice(0, at) + change.text + text.slice(at);
  if (change.how === "over") return text.slice(0, at) + change.text + text.slice(at + change.text.length);
  const to = at + Math.floor(change.to * (text.length - at + 1));
  return change.how === "cut" ? text.slice(0, at) + text.slice(to) : text.slice(0, to) + text.slice(at, to) + text.slice(to);
}

/** One of the texts with none to `most` changes; `pieces`: what this kind of text is made of, put in besides hostile signs. */
export function damagedText(texts: readonly string[], pieces: readonly string[] = [], most = 4): fc.Arbitrary<string> {
  const put = pieces.length === 0 ? sign : fc.oneof(sign, fc.constantFrom(...pieces));
  const change: fc.Arbitrary<TextChange> = fc.oneof(
    fc.record({ how: fc.constant("cut" as const), at: share, to: share }),
    fc.record({ how: fc.constant("put" as const), at: share, text: put }),
    fc.record({ how: fc.constant("over" as const), at: share, text: put }),
    fc.record({ how: fc.constant("again" as const), at: share, to: share }),
    fc.constant({ how: "case" as const }),
  );
  return fc
    .tuple(fc.constantFrom(...texts), fc.array(change, { maxLength: most }))
    .map(([text, changes]) => changes.reduce(textChanged, text));
}

const deep = (levels: number): unknown => JSON.parse("[".repeat(levels) + "]".repeat(levels));

/** Values that no field of a kind expects; each as JSON can say it. */
const hostileValue: fc.Arbitrary<unknown> = fc.oneof(
  fc.constantFrom<unknown>(
    null,
    true,
    false,
    0,
    -0,
    -1,
    0.5,
    1e-320,
    1e308,
    -1e308,
    2 ** 31,
    2 ** 53,
    -(2 ** 53),
    253_402_300_799_999,
    "",
    " ",
    "x".repeat(81),
    "x".repeat(3_000),
    "toString",
    "constructor",
    "__proto__",
    "NaN",
    "1e999",
    "2026-02-30",
    "2026-05-04T25:61:00Z",
    [],
    [null],
    [[]],
    {},
    { typed: "", unit: "" },
    { typed: "1e999", unit: "in" },
    { __proto__: null, toString: 1 },
  ),
  fc.constantFrom(70, 200).map(deep),
  sign,
  fc.integer(),
  fc.double({ noNaN: true, noDefaultInfinity: true }),
);
const hostileKey = fc.oneof(
  fc.constantFrom("__proto__", "constructor", "toString", "hasOwnProperty", "length", "", "id", "x".repeat(300)),
  sign,
);

type ValueChange = {
  readonly walk: readonly number[];
  readonly how: "set" | "like" | "drop" | "add" | "rename" | "again" | "empty" | "text";
  readonly like: number;
  readonly value: unknown;
  readonly key: string;
  readonly change: TextChange;
};

const valueChange = (pool: readonly unknown[]): fc.Arbitrary<ValueChange> =>
  fc.record({
    walk: fc.array(share, { minLength: 1, maxLength: 7 }),
    how: fc.constantFrom("set", "set", "like", "like", "like", "like", "drop", "add", "rename", "again", "empty", "text", "text"),
    like: share,
    value: pool.length === 0 ? hostileValue : fc.oneof(hostileValue, fc.constantFrom(...pool)),
    key: hostileKey,
    change: fc.oneof(
      fc.record({ how: fc.constant("put" as const), at: share, text: sign }),
      fc.record({ how: fc.constant("cut" as const), at: share, to: share }),
    ),
  });

type Box = Record<string, unknown>;
const isBox = (value: unknown): value is Box => typeof value === "object" && value !== null && Object.keys(value).length > 0;
/** `__proto__` as a key of its own, as `JSON.parse` makes it. */
const put = (box: Box, key: string, value: unknown): void => {
  if (Array.isArray(box)) {
    if (/^\d+$/.test(key)) box[Number(key)] = value;
  } else Object.defineProperty(box, key, { value, enumerable: true, configurable: true, writable: true });
};

/** Changes the value in place, where the walk leads. */
function change(root: Box, { walk, how, like, value: drawn, key, change: text }: ValueChange, pool: readonly unknown[]): void {
  // a copy: what is put in place is changed in place by the next change, and would stay changed for the next input, or hold itself
  const value = structuredClone(drawn);
  let box = root;
  let at = "";
  for (const step of walk) {
    const keys = Object.keys(box);
    at = keys[Math.floor(step * keys.length)] ?? "";
    const inner = box[at];
    if (!isBox(inner)) break;
    if (step !== walk.at(-1)) box = inner;
  }
  const keys = Object.keys(box);
  if (!Object.hasOwn(box, at)) at = keys[0] ?? "";
  const is = box[at];
  const alike = pool.filter((one) => typeof one === typeof is);
  if (how === "set" || (how === "like" && alike.length === 0)) put(box, at, value);
  else if (how === "like") put(box, at, structuredClone(alike[Math.floor(like * alike.length)]));
  else if (how === "text") put(box, at, typeof is === "string" ? textChanged(is, text) : value);
  else if (how === "drop") {
    if (Array.isArray(box)) box.splice(Number(at), 1);
    else delete box[at];
  } else if (how === "add") {
    if (Array.isArray(box)) box.push(value);
    else put(box, key, value);
  } else if (how === "rename") {
    delete box[at];
    put(box, key, is);
  } else if (how === "again") {
    if (Array.isArray(box)) box.push(structuredClone(is));
    else put(box, key, structuredClone(is));
  } else put(box, at, Array.isArray(is) ? [] : typeof is === "object" ? {} : "");
}

function changedValues(
  values: readonly unknown[],
  changes: fc.Arbitrary<readonly ValueChange[]>,
  pool: readonly unknown[],
): fc.Arbitrary<unknown> {
  const texts = values.map((value) => JSON.stringify(value));
  return fc.tuple(fc.nat(texts.length - 1), changes).map(([which, list]) => {
    const value: unknown = JSON.parse(texts[which] ?? "null");
    if (isBox(value)) for (const one of list) change(value, one, pool);
    return JSON.parse(JSON.stringify(value)) as unknown;
  });
}

/**
 * One of the values with none to `most` changes, as it would come out of JSON; `pool`: what stands for something there, and is put
 * where something else belongs. The values themselves stay as they are.
 */
export const damagedValue = (values: readonly unknown[], most = 3, pool: readonly unknown[] = []): fc.Arbitrary<unknown> =>
  changedValues(values, fc.array(valueChange(pool), { maxLength: most }), pool);

/** The same in its own shape: every change puts a text for a text, a number for a number, each from the pool. */
export const retoldValue = (values: readonly unknown[], most: number, pool: readonly unknown[]): fc.Arbitrary<unknown> =>
  changedValues(
    values,
    fc.array(
      valueChange(pool).map((one) => ({ ...one, how: "like" as const })),
      { minLength: 1, maxLength: most },
    ),
    pool,
  );

export type ByteChange =
  | { readonly how: "flip"; readonly at: number; readonly bit: number }
  | { readonly how: "set"; readonly at: number; readonly bytes: Uint8Array }
  | { readonly how: "cut"; readonly at: number };

/** Places crowd towards the front, where heads, lengths and offsets are. */
const place = fc.oneof(
  fc.double({ min: 0, max: 0.02, noNaN: true }),
  fc.double({ min: 0, max: 0.2, noNaN: true }),
  fc.double({ min: 0, max: 1, noNaN: true }),
);
const bytes = fc.oneof(
  fc.uint8Array({ minLength: 1, maxLength: 8 }),
  fc.constantFrom("ffffffff", "00000000", "7fffffff", "80000000", "ffff", "0000", "ffffffffffffffff").map((hex) => Buffer.from(hex, "hex")),
);
export const byteChange: fc.Arbitrary<ByteChange> = fc.oneof(
  { weight: 4, arbitrary: fc.record({ how: fc.constant("flip" as const), at: place, bit: fc.nat(7) }) },
  { weight: 4, arbitrary: fc.record({ how: fc.constant("set" as const), at: place, bytes }) },
  { weight: 1, arbitrary: fc.record({ how: fc.constant("cut" as const), at: place }) },
);

/** The bytes with these changes, one after the other. */
export function bytesChanged(original: Uint8Array, changes: readonly ByteChange[]): Uint8Array<ArrayBuffer> {
  let file = Uint8Array.from(original);
  for (const one of changes) {
    const at = Math.max(0, Math.floor(one.at * (file.length - 1)));
    if (one.how === "cut") file = file.slice(0, at);
    else if (one.how === "set") file.set(one.bytes.subarray(0, file.length - at), at);
    else if (file.length > 0) file[at] = (file[at] ?? 0) ^ (1 << one.bit);
  }
  return file;
}
