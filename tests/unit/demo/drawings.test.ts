import exifr from "exifr";
import sharp from "sharp";
import { describe, expect, test } from "vitest";
import { courtyard } from "#infra/demo/courtyard.ts";
import { type Drawn, drawing, drawingSvg } from "#infra/demo/drawings.ts";
import { isDrawn, linesWithin } from "#infra/demo/lettering.ts";
import { sideYard } from "#infra/demo/side-yard.ts";
import { type SketchName, sketches } from "#infra/demo/sketches.ts";
import { defaultSheet } from "#infra/sheets/index.ts";

const drawn: Drawn = {
  title: "Gasket under the flange on the wet side, before tightening",
  tag: "A",
  job: "Courtyard fall",
  sketch: "fitting detail",
  caption: "Gasket seated all round.",
  wallClock: "2026-05-12T11:44:00",
  offset: "-05:00",
  latitude: 41.0021,
  longitude: -89.1204,
};

describe("the demo's drawings", () => {
  test("are JPEG of a phone's size, with their own moment and place in EXIF", async () => {
    const bytes = await drawing(drawn);
    const { format, width, height } = await sharp(bytes).metadata();
    expect({ format, width, height }).toEqual({ format: "jpeg", width: 1600, height: 1200 });
    const tags = await exifr.parse(Buffer.from(bytes), { reviveValues: false, translateValues: false });
    expect(tags.DateTimeOriginal).toBe("2026:05:12 11:44:00");
    expect(tags.OffsetTimeOriginal).toBe("-05:00");
    expect(tags.latitude).toBeCloseTo(41.0021, 4);
    expect(tags.longitude).toBeCloseTo(-89.1204, 4);
    expect(tags.ImageDescription).toBe("Drawing, not a photograph");
  });

  test("are the same for the same thing and differ with title, tag and sketch", () => {
    expect(drawingSvg(drawn)).toBe(drawingSvg({ ...drawn }));
    const all = [
      drawn,
      { ...drawn, tag: "B" },
      { ...drawn, title: "Lid on and which way" },
      ...(Object.keys(sketches) as SketchName[]).map((sketch) => ({ ...drawn, title: sketch, sketch })),
    ].map(drawingSvg);
    expect(new Set(all).size).toBe(all.length);
  });

  test("letter every character of the titles and captions without a font", () => {
    const captions = [courtyard, sideYard].flatMap(({ title, crew }) => [
      title,
      ...crew.flatMap((line) => (Array.isArray(line) ? [String(line[2])] : [])),
    ]);
    const titles = defaultSheet()
      .items.filter((item) => item.kind === "picture")
      .map((item) => item.title.en);
    const unknown = new Set([...captions, ...titles].flatMap((text) => [...text]).filter((character) => !isDrawn(character)));
    expect([...unknown]).toEqual([]);
    expect(drawingSvg(drawn)).not.toContain("<text");
  });

  test("break a long title between words, never inside one", () => {
    const lines = linesWithin(drawn.title, 26, 600);
    expect(lines.length).toBeGreaterThan(1);
    expect(lines.join(" ")).toBe(drawn.title);
  });
});
