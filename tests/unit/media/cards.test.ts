import { Worker } from "node:worker_threads";
import sharp from "sharp";
import { afterAll, describe, expect, it } from "vitest";
import { photoFacts } from "#core/wire/index.ts";
import { CardReader, HeicDecoder, lookAt } from "#functions/media/index.ts";
import { OneThread } from "#functions/shared/index.ts";
import { cardPhoto } from "../../helpers/card-photo.ts";
import { exifBlock, jpegWith, TAG } from "../../helpers/photo-bytes.ts";

const threads = { heic: new HeicDecoder(), cards: new CardReader() };
afterAll(() => Promise.all([threads.heic.close(), threads.cards.close()]));
const sha = "0".repeat(64);
const cardsOf = async (bytes: Uint8Array) => (await lookAt(sha, bytes, threads)).facts.cards;

const texts = ["AB1A4NFRYDK9ZHN6078G", "AB1B4NFRYDK9ZHN60000", "AB1C4NFRYDK9ZHN61111", "AB1D4NFRYDK9ZHN62222"];
/** Larger than the picture that media looks at first; 84 pixels are 50 mm at 1.8 m under a lens of 3000 pixels. */
const asked = { width: 2800, height: 2100, side: 84, at: [1000, 700], texts } as const;

describe("cards in a photo", () => {
  it("are read with their corners in pixels of the whole upright picture, to four of them", async () => {
    const cards = (await cardsOf(await cardPhoto(asked))) ?? [];
    expect(cards.map(({ text }) => text).sort()).toEqual(texts);
    // of 1.68 pixels a millimetre: 12 mm are 20 pixels; 215.9 and 279.4 mm less 62 mm are 259 and 365 from the card's own corner
    const upperLeft = [
      [1020, 720],
      [1259, 720],
      [1259, 1065],
      [1020, 1065],
    ];
    for (const [i, text] of texts.entries()) {
      const [x, y] = upperLeft[i] as [number, number];
      const square = [
        [x, y],
        [x + 84, y],
        [x + 84, y + 84],
        [x, y + 84],
      ];
      const { corners } = cards.find((card) => card.text === text) ?? { corners: [] };
      expect(corners).toHaveLength(4);
      for (const [n, [u, v]] of corners.entries()) {
        // a decoder's corner lies within a module of 4 pixels
        expect(Math.abs(u - (square[n]?.[0] as number))).toBeLessThanOrEqual(4);
        expect(Math.abs(v - (square[n]?.[1] as number))).toBeLessThanOrEqual(4);
      }
    }
  });

  it("are read upright where the camera's note turns the picture", async () => {
    const lying = await sharp(await cardPhoto({ ...asked, width: 2000, height: 1500, at: [400, 300] }))
      .rotate(270)
      .jpeg()
      .toBuffer();
    const { facts } = await lookAt(sha, jpegWith(lying, exifBlock({ ifd0: { [TAG.orientation]: 6 } })), threads);
    expect([facts.width, facts.height]).toEqual([2000, 1500]);
    const [x, y] = facts.cards?.find(({ text }) => text === texts[0])?.corners[0] ?? [0, 0];
    expect(Math.hypot(x - 420, y - 320)).toBeLessThan(5);
  });

  it("are none in a picture without one, and what other codes say is not kept", async () => {
    expect(await cardsOf(await cardPhoto({ ...asked, width: 2000, height: 1500, texts: [] }))).toEqual([]);
    const others = ["https://example.com/", "WIFI:S:yard;T:WPA;P:secret;;"];
    const facts = (await lookAt(sha, await cardPhoto({ ...asked, width: 2000, height: 1500, at: [400, 300], texts: others }), threads))
      .facts;
    expect(facts.cards).toEqual([]);
    expect(JSON.stringify(facts)).not.toContain("secret");
  });

  it("pass the shape that the edge takes facts by", async () => {
    const { facts } = await lookAt(sha, await cardPhoto({ ...asked, width: 1600, height: 1200, at: [200, 200] }), threads);
    expect(facts.cards).toHaveLength(4);
    expect(photoFacts.safeParse(JSON.parse(JSON.stringify(facts))).success).toBe(true);
  });
});

describe("a thread of its own", () => {
  it("that hangs or dies costs its piece of work, and the next one gets a new thread", async () => {
    const worker = `const { parentPort } = require("node:worker_threads");
      parentPort.on("message", (asked) => { if (asked === "hang") for (;;); if (asked === "die") process.exit(3); parentPort.postMessage(asked + "!"); });`;
    let started = 0;
    const thread = new OneThread<string, string>({
      start: () => {
        started += 1;
        return new Worker(worker, { eval: true });
      },
      limit: 1_500,
      failed: (says) => `failed: ${says}`,
    });
    try {
      const answers = await Promise.all(["one", "hang", "two", "die", "three"].map((asked) => thread.ask(asked)));
      expect(answers).toEqual(["one!", "failed: the thread took too long", "two!", "failed: the thread stopped", "three!"]);
      expect(started).toBe(3);
    } finally {
      await thread.close();
    }
  });

  it("that could not be started costs the piece that asked for it, and the next one tries again", async () => {
    let tried = 0;
    const thread = new OneThread<string, string>({
      start: () => {
        tried += 1;
        if (tried === 1) throw new Error("no thread can be made");
        return new Worker(`require("node:worker_threads").parentPort.on("message", function (asked) { this.postMessage(asked + "!"); });`, {
          eval: true,
        });
      },
      limit: 1_500,
      failed: (says) => `failed: ${says}`,
    });
    try {
      const [one, two] = await Promise.allSettled(["one", "two"].map((asked) => thread.ask(asked)));
      expect(one).toMatchObject({ status: "rejected", reason: { message: "no thread can be made" } });
      expect(two).toEqual({ status: "fulfilled", value: "two!" });
    } finally {
      await thread.close();
    }
  });
});
