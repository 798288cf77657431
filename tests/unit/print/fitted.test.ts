import sharp from "sharp";
import { describe, expect, it } from "vitest";
import { bytesOf, Fitting } from "#functions/print/fitted.ts";
import type { Served } from "#functions/print/origin.ts";
import { chanceFrom } from "#infra/chance/index.ts";

/** With grain, so that a smaller one has fewer bytes. */
async function picture(seed: number, width = 1600, height = 1200): Promise<Served> {
  const { below } = chanceFrom(seed);
  const pixels = Uint8Array.from({ length: 400 * 300 * 3 }, () => below(256));
  const made = sharp(pixels, { raw: { width: 400, height: 300, channels: 3 } }).resize({ width, height, fit: "fill" });
  return { type: "image/jpeg", bytes: new Uint8Array(await made.jpeg({ quality: 82 }).toBuffer()) };
}

const pictures = await Promise.all([1, 2, 3, 4, 5].map((seed) => picture(seed)));
const whole = bytesOf(new Map(pictures.map((one, at) => [`picture ${at}`, one])));
const taken = (fitting: Fitting, from = 0, until = pictures.length): void =>
  pictures.slice(from, until).forEach((one, at) => {
    fitting.take(`picture ${from + at}`, one);
  });
const widths = async (files: ReadonlyMap<string, Served>): Promise<readonly number[]> =>
  Promise.all([...files.values()].map(async ({ bytes }) => (await sharp(bytes).metadata()).width));

describe("Fitting", () => {
  it("leaves pictures as they are that come to no more than they may", async () => {
    const fitting = new Fitting(whole);
    taken(fitting);
    const files = await fitting.all();
    expect([...files]).toEqual(pictures.map((one, at) => [`picture ${at}`, one]));
  });

  it("does not make a picture again that media made as small", async () => {
    const small: Served = { ...(await picture(6, 1000, 750)), whole: true };
    const fitting = new Fitting(small.bytes.length + 1);
    fitting.take("small", small);
    fitting.take("large", { ...(await picture(7)), whole: true });
    const files = await fitting.all();
    // both have to go down to a size below
    expect((await widths(files)).every((width) => width < 1000)).toBe(true);
    const roomy = new Fitting(small.bytes.length * 2.2);
    roomy.take("small", small);
    roomy.take("large", pictures[0] as Served);
    expect((await roomy.all()).get("small")).toBe(small);
  });

  it("makes all of them as small as the first size where one byte is too many, those too that came before it was", async () => {
    const fitting = new Fitting(whole - 1);
    taken(fitting);
    const files = await fitting.all();
    expect([...files.keys()]).toEqual(pictures.map((_, at) => `picture ${at}`));
    expect(await widths(files)).toEqual([1000, 1000, 1000, 1000, 1000]);
    expect([...files.values()].every(({ whole }) => whole)).toBe(true);
  });

  it("makes of pictures that come late what it makes of them at once", async () => {
    const [late, atOnce] = [new Fitting(whole - 1), new Fitting(whole - 1)];
    taken(atOnce);
    taken(late, 0, 2);
    await new Promise((later) => setTimeout(later, 50));
    taken(late, 2);
    expect([...(await late.all())]).toEqual([...(await atOnce.all())]);
  });

  it("goes from size to size until they fit, each made of the picture as it came", async () => {
    const first = new Fitting(whole - 1);
    taken(first);
    const most = bytesOf(await first.all()) - 1;
    const second = new Fitting(most);
    taken(second);
    const files = await second.all();
    expect(await widths(files)).toEqual([850, 850, 850, 850, 850]);
    expect(bytesOf(files)).toBeLessThanOrEqual(most);
    const direct = await sharp((pictures[0] as Served).bytes)
      .resize({ width: 850, height: 850, fit: "inside" })
      .jpeg({ quality: 74 })
      .toBuffer();
    expect(files.get("picture 0")?.bytes).toEqual(new Uint8Array(direct));
  });

  it("takes the smallest size where none fits, and leaves what is no picture as it came", async () => {
    const fitting = new Fitting(1);
    const none = { type: "image/jpeg", bytes: new TextEncoder().encode("no picture") };
    fitting.take("none", none);
    taken(fitting, 0, 1);
    const files = await fitting.all();
    expect(files.get("none")).toBe(none);
    expect((await widths(new Map([["one", files.get("picture 0") as Served]])))[0]).toBe(560);
  });
});
