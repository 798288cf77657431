import { createHash } from "node:crypto";
import type { Base } from "./decode.ts";

/**
 * SHA-256 over size and pixels of the upright picture before it is encoded, hex: the same for two files that hold the same
 * picture, whatever stands beside it in them.
 */
export const pixelHash = ({ data, width, height, channels }: Base): string =>
  createHash("sha256").update(`${width} ${height} ${channels} `).update(data).digest("hex");
