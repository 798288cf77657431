import sharp from "sharp";
import type { Rendered } from "./render.ts";

/** As a phone stores it. */
export const jpegOf = ({ pixels, window: { width, height } }: Rendered, quality = 90): Promise<Buffer> =>
  sharp(pixels, { raw: { width, height, channels: 3 } })
    .jpeg({ quality })
    .toBuffer();
