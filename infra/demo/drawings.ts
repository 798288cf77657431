import sharp from "sharp";
import { letteringWidth, linesWithin } from "./lettering.ts";
import { Pen } from "./pen.ts";
import { type SketchName, sketches } from "./sketches.ts";

export interface Drawn {
  readonly title: string;
  readonly tag?: string;
  readonly job: string;
  readonly sketch: SketchName;
  /** Words under the title, such as the caption. */
  readonly caption?: string;
  /** The camera's wall clock, `2026-05-12T09:14:00`, and its offset, `-05:00`. */
  readonly wallClock: string;
  readonly offset: string;
  /** Degrees, north and east positive. */
  readonly latitude: number;
  readonly longitude: number;
}

const WIDTH = 1600;
const HEIGHT = 1200;

/** Degrees as the three rationals of Exif 2.32, 4.6.6: degrees, minutes, seconds to the hundredth. */
function degrees(value: number): string {
  const hundredths = Math.round(Math.abs(value) * 360_000);
  return `${Math.floor(hundredths / 360_000)}/1 ${Math.floor((hundredths % 360_000) / 6_000)}/1 ${hundredths % 6_000}/100`;
}

/** The sheet with its frame, sketch and title block, as SVG. */
export function drawingSvg(drawn: Drawn): string {
  const pen = new Pen(`${drawn.job} ${drawn.title} ${drawn.tag ?? ""} ${drawn.wallClock}`);
  const frame = (inset: number, width: number): void =>
    pen.shape(
      [
        [inset, inset],
        [WIDTH - inset, inset],
        [WIDTH - inset, HEIGHT - inset],
        [inset, HEIGHT - inset],
      ],
      { width },
    );
  frame(28, 3);
  frame(42, 6);
  const notice = "DRAWING - NOT A PHOTOGRAPH";
  pen.words(notice, (WIDTH - letteringWidth(notice, 36)) / 2, 76, 36, 6, "#a3261b");
  sketches[drawn.sketch](pen);
  pen.line(
    [
      [42, 950],
      [WIDTH - 42, 950],
    ],
    { width: 6 },
  );
  pen.line(
    [
      [1130, 950],
      [1130, HEIGHT - 42],
    ],
    { width: 4 },
  );
  const title = drawn.tag === undefined ? drawn.title : `${drawn.title}, ${drawn.tag}`;
  linesWithin(title, 26, 1030)
    .slice(0, 3)
    .forEach((line, i) => {
      pen.words(line, 70, 975 + i * 44, 26, 4);
    });
  linesWithin(drawn.caption ?? "", 17, 1030)
    .slice(0, 2)
    .forEach((line, i) => {
      pen.words(line, 70, 1108 + i * 28, 17, 2.5, "#4a443b");
    });
  linesWithin(drawn.job, 22, 380)
    .slice(0, 2)
    .forEach((line, i) => {
      pen.words(line, 1155, 975 + i * 36, 22, 3);
    });
  pen.words(drawn.wallClock.replace("T", " ").slice(0, 16), 1155, 1070, 22, 3);
  pen.words("NOT TO SCALE", 1155, 1115, 20, 3, "#4a443b");
  return `<svg xmlns="http://www.w3.org/2000/svg" width="${WIDTH}" height="${HEIGHT}" viewBox="0 0 ${WIDTH} ${HEIGHT}"><rect width="${WIDTH}" height="${HEIGHT}" fill="#f3ead6"/>${pen.svg}</svg>`;
}

/** Moment, zone and place as a phone's camera leaves them in EXIF, and that it is no photograph. */
export const exifOf = (
  { wallClock, offset, latitude, longitude }: Pick<Drawn, "wallClock" | "offset" | "latitude" | "longitude">,
  description: string,
) => ({
  IFD0: { ImageDescription: description, Software: "Asburied demo" },
  IFD2: { DateTimeOriginal: wallClock.replaceAll("-", ":").replace("T", " "), OffsetTimeOriginal: offset },
  IFD3: {
    GPSLatitudeRef: latitude < 0 ? "S" : "N",
    GPSLatitude: degrees(latitude),
    GPSLongitudeRef: longitude < 0 ? "W" : "E",
    GPSLongitude: degrees(longitude),
  },
});

/** The drawing as a JPEG. */
export const drawing = async (drawn: Drawn): Promise<Uint8Array> =>
  sharp(Buffer.from(drawingSvg(drawn)))
    .jpeg({ quality: 78 })
    .withExif(exifOf(drawn, "Drawing, not a photograph"))
    .toBuffer();
