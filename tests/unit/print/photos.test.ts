import { createHash } from "node:crypto";
import { describe, expect, it } from "vitest";
import type { RecordModel } from "#core/record/index.ts";
import type { Served } from "#functions/print/origin.ts";
import { fetchPhotos, sizesToAsk } from "#functions/print/photos.ts";
import type { PrintRecord, Store } from "#functions/shared/index.ts";
import { memoryStore } from "../../helpers/memory-store.ts";

const hash = (bytes: Uint8Array): string => createHash("sha256").update(bytes).digest("hex");
const jpeg = (name: string): Uint8Array => new Uint8Array(Buffer.concat([Buffer.from([0xff, 0xd8, 0xff, 0xe0]), Buffer.from(name)]));
const [one, two] = ["a".repeat(64), "b".repeat(64)];
const key = (photo: string, name: string): string => `kettle/renditions/${photo}/${name}.jpg`;
const both = (photo: string, bytes: number) => [
  { key: key(photo, "print"), bytes, sha256: hash(jpeg(`${photo} print`)) },
  { key: key(photo, "column"), bytes: bytes / 4, sha256: hash(jpeg(`${photo} column`)) },
];

describe("sizesToAsk", () => {
  const asked = (pictures: PrintRecord["photos"], most: number) =>
    [...sizesToAsk([one, two], pictures, most)].map(([photo, sizes]) => [photo, sizes.map((size) => size.key)]);

  it("asks for the largest in which all of them fit, with nothing behind it", () => {
    expect(asked({ [one]: both(one, 400), [two]: both(two, 600) }, 1000)).toEqual([
      [one, [key(one, "print")]],
      [two, [key(two, "print")]],
    ]);
  });

  it("asks for the smaller ones of all where they do not, and for the larger where one is not there", () => {
    expect(asked({ [one]: both(one, 400), [two]: both(two, 604) }, 1000)).toEqual([
      [one, [key(one, "column"), key(one, "print")]],
      [two, [key(two, "column"), key(two, "print")]],
    ]);
  });

  it("asks for what there is of a photo that was read before there was a smaller one, and leaves out what has none", () => {
    expect(asked({ [one]: both(one, 4000).slice(0, 1) }, 1000)).toEqual([[one, [key(one, "print")]]]);
    expect(asked({ [one]: [{ key: key(one, "print") }], [two]: both(two, 4000) }, 1000)).toEqual([
      [one, [key(one, "print")]],
      [two, [key(two, "column"), key(two, "print")]],
    ]);
  });
});

describe("fetchPhotos", () => {
  const model = {
    steps: [{ pictures: [one, two].map((photo) => ({ photo, rendition: key(photo, "print") })) }],
    paperPictures: [],
    company: {},
  } as unknown as RecordModel;

  async function fetched(there: Readonly<Record<string, Uint8Array>>, pictures: PrintRecord["photos"], get?: Store["get"]) {
    const store = memoryStore();
    for (const [at, bytes] of Object.entries(there)) store.objects.set(at, { bytes, type: "image/jpeg" });
    const come = new Map<string, Served>();
    const outcome = await fetchPhotos(model, pictures, get ? { get } : store, (address, served) => come.set(address, served));
    return {
      outcome,
      come: [...come].map(([address, { bytes, whole }]) => [
        address.slice(-68, -4).slice(0, 1),
        Buffer.from(bytes).toString("latin1").slice(4),
        whole,
      ]),
    };
  }

  it("knows those whole that are what media wrote, and takes the larger one where the smaller is not there", async () => {
    const there = { [key(one, "print")]: jpeg(`${one} print`), [key(two, "column")]: jpeg(`${two} other`) };
    const { outcome, come } = await fetched(there, { [one]: both(one, 40_000_000), [two]: both(two, 40_000_000) });
    expect(outcome).toEqual({ ok: true, value: new Map() });
    expect(come.sort()).toEqual([
      ["a", `${one} print`, true],
      ["b", `${two} other`, undefined],
    ]);
  });

  it("names what is in the store in no size, and what is no JPEG", async () => {
    const { outcome, come } = await fetched({ [key(two, "print")]: Buffer.from("GIF89a") }, { [one]: both(one, 4), [two]: both(two, 4) });
    expect(outcome).toEqual({
      ok: true,
      value: new Map([
        [one, "photo-not-in-store"],
        [two, "photo-unreadable"],
      ]),
    });
    expect(come).toEqual([]);
  });

  it("asks a store that is down no further", async () => {
    let asked = 0;
    const many = Array.from({ length: 40 }, (_, at) => at.toString(16).padStart(64, "0"));
    const wide = {
      ...model,
      steps: [{ pictures: many.map((photo) => ({ photo, rendition: key(photo, "print") })) }],
    } as unknown as RecordModel;
    const outcome = await fetchPhotos(
      wide,
      Object.fromEntries(many.map((photo) => [photo, both(photo, 4)])),
      {
        get: async () => {
          asked += 1;
          return { ok: false, refusal: { code: "store-unavailable", place: "store", figures: {} } };
        },
      },
      () => {},
    );
    expect(outcome).toMatchObject({ ok: false, refusal: { code: "store-unavailable" } });
    expect(asked).toBeLessThan(10);
  });
});
