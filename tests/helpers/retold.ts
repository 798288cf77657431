import sharp, { type Sharp } from "sharp";
import { open, type Pixels, pixelsOf, within } from "./photographs.ts";

/** What happens to a picture that is handed in again; each comes back as a file, as it would arrive. */
export type Retold = (pixels: Pixels) => Promise<Sharp>;

const asJpeg = async (picture: Sharp, quality = 85): Promise<Sharp> => sharp(await picture.jpeg({ quality }).toBuffer());

function cropped({ data, width, height }: Pixels, share: number, where: "middle" | "corner"): Sharp {
  const [x, y] = [Math.round(width * share), Math.round(height * share)];
  const [left, top] = where === "middle" ? [x >> 1, y >> 1] : [0, 0];
  return open({ data, width, height }).extract({ left, top, width: width - x, height: height - y });
}

/** A phone's screen of 1170 × 2532 with the picture in the middle of black, a clock and a row of signs in white. */
export async function screenOf(pixels: Pixels): Promise<Sharp> {
  const signs = Buffer.from(
    '<svg width="1170" height="2532"><path fill="#fff" d="M90 60h90v36h-90zM1000 60h100v36h-100zM150 2380h70v70h-70zM550 2380h70v70h-70zM950 2380h70v70h-70z"/></svg>',
  );
  const screen = open(pixels).resize(1170, 1600, { fit: "inside" });
  const inside = await pixelsOf(screen);
  return sharp({ create: { width: 1170, height: 2532, channels: 3, background: "#000" } }).composite([
    { input: inside.data, raw: { width: inside.width, height: inside.height, channels: 3 } },
    { input: signs },
  ]);
}

const asPng = async (picture: Sharp): Promise<Sharp> => sharp(await picture.png({ compressionLevel: 1 }).toBuffer());

/** Rows of the table, by kind. */
export const retold: Readonly<Record<string, Readonly<Record<string, Retold>>>> = {
  recompressed: {
    "JPEG of quality 85": (pixels) => asJpeg(open(pixels)),
    "JPEG of quality 40": (pixels) => asJpeg(open(pixels), 40),
    "JPEG of quality 15": (pixels) => asJpeg(open(pixels), 15),
  },
  resized: {
    "to 640 px": (pixels) => asJpeg(within(open(pixels), 640)),
    "to 320 px": (pixels) => asJpeg(within(open(pixels), 320)),
    "to 160 px": (pixels) => asJpeg(within(open(pixels), 160)),
  },
  cropped: {
    "2 % off, all sides": (pixels) => asJpeg(cropped(pixels, 0.02, "middle")),
    "5 % off, all sides": (pixels) => asJpeg(cropped(pixels, 0.05, "middle")),
    "10 % off, all sides": (pixels) => asJpeg(cropped(pixels, 0.1, "middle")),
    "5 % off, one corner": (pixels) => asJpeg(cropped(pixels, 0.05, "corner")),
  },
  turned: {
    "by 90°": (pixels) => asJpeg(open(pixels).rotate(90)),
    "by 180°": (pixels) => asJpeg(open(pixels).rotate(180)),
    "by 270°": (pixels) => asJpeg(open(pixels).rotate(270)),
    mirrored: (pixels) => asJpeg(open(pixels).flop()),
    "mirrored, 90°": async (pixels) => asJpeg(open(await pixelsOf(open(pixels).flop())).rotate(90)),
  },
  brightness: {
    "× 0.7": (pixels) => asJpeg(open(pixels).linear(0.7, 0)),
    "× 1.3": (pixels) => asJpeg(open(pixels).linear(1.3, 0)),
    "+ 40 steps": (pixels) => asJpeg(open(pixels).linear(1, 40)),
    "flatter, × 0.6 + 50": (pixels) => asJpeg(open(pixels).linear(0.6, 50)),
  },
  "on a screen": { "between black bars": async (pixels) => asPng(await screenOf(pixels)) },
};
