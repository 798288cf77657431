import fc from "fast-check";
import { beforeAll, expect, it } from "vitest";
import { genesis, type Json, type Ledger } from "#core/ledger/index.ts";
import { type Outcome, ok, refuse } from "#core/outcome/index.ts";
import { digest } from "#infra/node-digest.ts";
import { workersStreams } from "#infra/simulate/workers-streams.ts";
import { archiveOf, chained, jsonBytes, type PackedFile, packed } from "../../helpers/archive.ts";
import { byteChange, bytesChanged, damagedValue, hostileSigns } from "../../helpers/damage.ts";
import { type Loose, sha256 } from "../../helpers/edge.ts";
import { expectRefusal, fuzz, patience } from "../../helpers/fuzz.ts";

workersStreams();
// By a variable name: the edge is written for another platform's types than the tests.
const readFile = "#functions/edge/archives/read.ts";
const { readArchive } = (await import(readFile)) as {
  readArchive: (services: unknown, company: string, body: ReadableStream<Uint8Array> | null, now: number) => Promise<Outcome<Loose>>;
};

/** Bytes as they come over the line, in pieces of this size. */
function lineOf(bytes: Uint8Array, size: number): ReadableStream<Uint8Array> {
  let at = 0;
  return new ReadableStream({
    type: "bytes",
    pull(controller) {
      if (at >= bytes.length) {
        controller.close();
        (controller as ReadableByteStreamController).byobRequest?.respond(0);
        return;
      }
      controller.enqueue(bytes.slice(at, at + size));
      at += size;
    },
  });
}

/** The edge's services without a database: what was put into the store, and whether anything was written. */
function servicesOf() {
  const stored = new Map<string, Uint8Array>();
  let written = 0;
  const nothing = () => [];
  const put = async (key: string, stream: ReadableStream<Uint8Array>, about: { readonly length: number; readonly sha256: string }) => {
    try {
      const bytes = new Uint8Array(await new Response(stream).arrayBuffer());
      if (bytes.length !== about.length || sha256(bytes) !== about.sha256) return refuse("photo-hash-differs", key);
      stored.set(key, bytes);
      return ok(null);
    } catch {
      return refuse("store-unavailable", key);
    }
  };
  const services = {
    digest,
    clock: () => 1_700_000_000_000,
    store: { put },
    ledgers: {
      stand: async () => ({ head: genesis, known: new Map() }),
      write: async () => {
        written += 1;
        return true;
      },
    },
    photos: { get: async () => undefined, adding: nothing, blur: nothing, use: nothing },
    papers: { get: async () => undefined, adding: nothing },
    jobs: { addJob: nothing },
    ownNumbers: { giveIfFree: nothing },
    companies: { keepVersion: nothing, keepPerson: nothing },
    records: { add: nothing },
    seenPairs: { named: nothing },
    held: { put: nothing },
  };
  return { services, stored, written: () => written };
}

const opened = { kind: "job-opened", what: { title: "Elm Street 4", zone: "UTC", language: "en", units: "inch", ownNumber: "26-1" } };
const moved = {
  kind: "moved-in",
  what: {
    from: "job-two",
    reason: "r",
    entries: [
      { id: "e", kind: "picture-taken", author: { person: "p", phone: "f" }, run: 0, made: 0, what: { photo: "a".repeat(64), item: "i" } },
    ],
  },
};
const picture = { kind: "picture-taken", what: { item: "i", photo: "b".repeat(64), bytes: 1, type: "image/jpeg", taken: 0 } };
const took = { kind: "version-taken-over", what: { thing: "sheet", name: "n", number: 1, digest: "c".repeat(64) } };
const said = [
  opened,
  took,
  picture,
  moved,
  { kind: "paper-added", what: { title: "t", paper: "p", pdf: "d".repeat(64) } },
  { kind: "body-withheld", what: { entry: { id: "e", digest: "a".repeat(64) }, parts: ["what"], reason: "r" } },
];

let sound: Ledger;
beforeAll(async () => {
  sound = await chained("job-one", said as never);
});

/** Names that reach elsewhere, or are none. */
const names = [
  "../../other/originals/x",
  "/etc/passwd",
  "photos\\..\\x",
  "photos/\u0000",
  "ledger.json",
  "list",
  "C:x",
  "photos/..",
  "x".repeat(400),
  "",
  ...hostileSigns,
];
const share = fc.double({ min: 0, max: 1, maxExcluded: true, noNaN: true });
const fileChange = fc.record({
  how: fc.constantFrom("drop", "rename", "again", "swap", "more", "longer", "shorter"),
  at: share,
  name: fc.constantFrom(...names),
});
type FileChange = typeof fileChange extends fc.Arbitrary<infer T> ? T : never;

function filesChanged(files: readonly PackedFile[], { how, at, name }: FileChange): readonly PackedFile[] {
  const i = Math.floor(at * files.length);
  const file = files[i];
  if (file === undefined) return files;
  const others = files.filter((_, at) => at !== i);
  if (how === "drop") return others;
  if (how === "rename") return files.with(i, { ...file, name });
  if (how === "again") return [...files, file];
  if (how === "swap") return [...others.slice(0, 1), file, ...others.slice(1)];
  if (how === "more") return [...files.slice(0, i), { name, bytes: new Uint8Array(5) }, ...files.slice(i)];
  return files.with(i, {
    ...file,
    bytes: how === "longer" ? Buffer.concat([file.bytes, file.bytes]) : file.bytes.subarray(0, file.bytes.length / 2),
  });
}

type Trial = { readonly list: unknown; readonly files: readonly PackedFile[] };
const asItIs = (ledger: Ledger): Trial => archiveOf(ledger);
/** What an archive can be spoilt by, each from one that is good. */
const trials: fc.Arbitrary<() => Promise<Trial>> = fc.oneof(
  fc.constant(async () => asItIs(sound)),
  // the chain holds and says nothing that makes sense
  fc.array(damagedValue(said, 3), { minLength: 1, maxLength: 4 }).map((spoilt) => async () => {
    const entries = spoilt.filter(
      (one): one is { kind: string; what: Json } => typeof (one as Loose)?.kind === "string" && (one as Loose)?.what !== undefined,
    );
    return asItIs(await chained("job-one", [opened, ...entries] as never));
  }),
  // the list is another; its own name is right
  damagedList(),
  // the ledger is another; the list knows it
  damagedLedger(),
  fc.array(fileChange, { minLength: 1, maxLength: 2 }).map((changes) => async () => {
    const { list, files } = asItIs(sound);
    return { list, files: changes.reduce(filesChanged, files) };
  }),
);

function damagedList(): fc.Arbitrary<() => Promise<Trial>> {
  const { list } = archiveOf({ format: 1, job: "job-one", head: genesis, entries: [], versions: [] });
  return damagedValue([list], 3).map((spoilt) => async () => {
    const good = asItIs(sound);
    // what was not spoilt is as the sound ledger has it
    const own = typeof spoilt === "object" && spoilt !== null ? (spoilt as Loose) : undefined;
    if (own?.ledger?.sha256 === list.ledger.sha256)
      Object.assign(own, { ledger: { ...(good.list as Loose).ledger, ...keptOf(own.ledger, list.ledger) } });
    if (own?.head?.hash === list.head.hash) Object.assign(own, { head: (good.list as Loose).head });
    for (const record of Array.isArray(own?.records) ? own.records : [])
      if (record?.head?.hash === list.head.hash) record.head = (good.list as Loose).head;
    return { list: spoilt, files: good.files };
  });
}

/** Of an object those members that were changed. */
const keptOf = (spoilt: Loose, before: Loose): Loose =>
  Object.fromEntries(Object.entries(spoilt).filter(([name, value]) => value !== before[name]));

function damagedLedger(): fc.Arbitrary<() => Promise<Trial>> {
  return fc
    .tuple(damagedValue(said, 1), fc.constantFrom("entries/0/envelope", "entries/1/body/what", "head", "", "entries"))
    .map(([spoilt, at]) => async () => {
      const { list, files } = asItIs(sound);
      const whole: Loose = structuredClone(sound);
      const place = at === "" ? whole : at.split("/").reduce((inner: Loose, name) => inner[name], whole);
      // a list's own length is no member of it
      const members = Object.entries((spoilt ?? {}) as Loose).filter(([name]) => name !== "length" || !Array.isArray(place));
      for (const [name, value] of members) place[name] = value;
      if (typeof spoilt !== "object") place.number = spoilt;
      const bytes = jsonBytes(whole);
      const ledger = { name: "ledger.json", bytes: bytes.length, sha256: sha256(bytes) };
      return { list: { ...(list as Loose), ledger }, files: files.with(0, { name: "ledger.json", bytes }) };
    });
}

it(
  "damaged archives are refused with the part, and nothing is written; a good one is read",
  async () => {
    await fuzz({
      kind: "archives",
      inputs: fc.tuple(
        trials,
        fc.array(byteChange, { maxLength: 2 }),
        fc.constantFrom(0, 1, 1, 1),
        fc.constantFrom(500, 1 << 16, 1 << 16, 1 << 16),
      ),
      async read([trial, changes, whole, size]) {
        const { list, files } = await trial();
        const bytes = packed([{ name: "list", bytes: jsonBytes(list) }, ...files]);
        const { services, stored, written } = servicesOf();
        const read = await readArchive(
          services,
          "company-a",
          lineOf(whole === 1 ? bytes : bytesChanged(bytes, changes), size),
          1_700_000_000_000,
        );
        for (const key of stored.keys()) expect(key).toMatch(/^company-a\/(originals|papers|renditions|records)\/[A-Za-z0-9_./-]+$/);
        for (const key of stored.keys()) expect(key).not.toContain("..");
        if (!read.ok) {
          expect(written()).toBe(0);
          return read.refusal;
        }
        expect(written()).toBe(1);
        return "taken";
      },
      least: { taken: 0.1, refused: 0.2 },
    });
  },
  patience(30),
);

/** A line that sends as long as it is read: `head`, then the same block again and again, up to `most` bytes. */
function endless(
  head: Uint8Array,
  block: Uint8Array,
  most: number,
): { readonly line: ReadableStream<Uint8Array>; readonly peak: () => number } {
  let sent = 0;
  let peak = 0;
  const first = head.slice();
  const line = new ReadableStream<Uint8Array>({
    type: "bytes",
    pull(controller) {
      peak = Math.max(peak, process.memoryUsage().arrayBuffers);
      if (sent >= most) {
        controller.close();
        (controller as ReadableByteStreamController).byobRequest?.respond(0);
        return;
      }
      controller.enqueue((sent === 0 ? first : block).slice());
      sent += sent === 0 ? head.length : block.length;
    },
  });
  return { line, peak: () => peak };
}

it("a list without end, a ledger and a photo that lie about their size: no more is held than is allowed", async () => {
  const { list, files } = archiveOf(sound);
  const headOf = (bytes: Uint8Array, parts: readonly PackedFile[]) => packed([{ name: "list", bytes }, ...parts]).slice(0, -64);
  const lying = (change: (list: Loose) => void): Uint8Array => {
    const own = structuredClone(list) as Loose;
    change(own);
    return jsonBytes(own);
  };
  const block = new Uint8Array(1 << 20).fill(0x20);
  const cases: readonly (readonly [string, Uint8Array])[] = [
    ["archive-unreadable", headOf(new TextEncoder().encode("{"), []).slice(0, -16)],
    [
      "archive-unreadable",
      headOf(
        lying((own) => Object.assign(own.ledger, { bytes: 2 ** 50 })),
        [],
      ),
    ],
    [
      "archive-unreadable",
      headOf(
        lying((own) => Object.assign(own.photos[0].file, { bytes: 2 ** 50 })),
        files.slice(0, 1),
      ),
    ],
    [
      "archive-unreadable",
      headOf(
        lying((own) => Object.assign(own.photos[0], { bytes: 2 ** 50, file: { ...own.photos[0].file, bytes: 2 ** 50 } })),
        files.slice(0, 1),
      ),
    ],
    [
      "archive-part-differs",
      headOf(
        lying((own) => Object.assign(own.photos[0], { bytes: 25_000_000, file: { ...own.photos[0].file, bytes: 25_000_000 } })),
        files.slice(0, 2),
      ).slice(0, -316),
    ],
  ];
  for (const [code, head] of cases) {
    const before = process.memoryUsage().arrayBuffers;
    const { line, peak } = endless(head, block, 50_000_000);
    const { services, written } = servicesOf();
    const read = await readArchive(services, "company-a", line, 0);
    expect(read).toMatchObject({ ok: false, refusal: { code } });
    if (!read.ok) expectRefusal(read.refusal);
    expect(written()).toBe(0);
    // the largest list, as it grows, and what the collector has not yet taken back
    expect(peak() - before).toBeLessThan(400_000_000);
  }
}, 60_000);
