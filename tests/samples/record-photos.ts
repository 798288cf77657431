import { createHash } from "node:crypto";
import sharp from "sharp";

export interface SamplePhoto {
  readonly sha256: string;
  readonly bytes: Uint8Array;
  readonly width: number;
  readonly height: number;
}

/** Drawings that stand for photos, clearly none: a basin, a pipe and the ground, each another way. Every third stands upright. */
export const samplePhotos = async (count: number): Promise<readonly SamplePhoto[]> =>
  Promise.all(
    Array.from({ length: count }, async (_, at) => {
      const [width, height] = at % 3 === 2 ? [600, 800] : [800, 600];
      const hue = (at * 47) % 360;
      const drawing = `<svg xmlns="http://www.w3.org/2000/svg" width="${width}" height="${height}" viewBox="0 0 800 600" preserveAspectRatio="xMidYMid slice">
<rect x="-200" y="-200" width="1200" height="1000" fill="hsl(${hue},22%,82%)"/><rect x="-200" y="380" width="1200" height="500" fill="#8a6f4e"/>
<rect x="${160 + at * 7}" y="300" width="380" height="220" fill="#3b4248"/><path d="M${540 + at * 7} 400H1000" stroke="#e8e6df" stroke-width="34"/>
<circle cx="${540 + at * 7}" cy="400" r="40" fill="hsl(${hue},60%,45%)"/>${Array.from({ length: at + 1 }, (_mark, mark) => `<rect x="${40 + mark * 34}" y="40" width="20" height="60" fill="#222"/>`).join("")}</svg>`;
      const bytes = new Uint8Array(await sharp(Buffer.from(drawing)).jpeg({ quality: 78 }).toBuffer());
      return { sha256: createHash("sha256").update(bytes).digest("hex"), bytes, width, height };
    }),
  );
