import encodeQR from "qr";
import sharp from "sharp";

/** A code as an SVG of its own, without a light border; `at` and `side` in pixels. */
const drawn = (text: string, [x, y]: readonly [number, number], side: number): string => {
  const rows = encodeQR(text, "raw", { ecc: "medium", border: 1 })
    .slice(1, -1)
    .map((row) => row.slice(1, -1));
  const dark = rows.flatMap((row, v) => row.flatMap((one, u) => (one ? [`M${u} ${v}h1v1h-1z`] : [])));
  return `<svg x="${x}" y="${y}" width="${side}" height="${side}" viewBox="0 0 ${rows.length} ${rows.length}" shape-rendering="crispEdges"><path d="${dark.join("")}"/></svg>`;
};

export interface CardPhotoAsked {
  /** Of the code's squares, pixels; the card is as much larger as a letter sheet is than 50 mm. */
  readonly side: number;
  readonly texts: readonly string[];
  readonly width: number;
  readonly height: number;
  /** Where the card's upper left corner lies. */
  readonly at: readonly [number, number];
}

/** Noise like gravel, and on it a letter sheet with codes 12 mm from its corners, from the upper left one clockwise. */
export async function cardPhoto({ side, texts, width, height, at: [left, top] }: CardPhotoAsked): Promise<Buffer> {
  const millimetres = (n: number): number => Math.round((n * side) / 50);
  const [w, h, margin] = [millimetres(215.9), millimetres(279.4), millimetres(12)];
  const [right, below] = [w - margin - side, h - margin - side];
  const corners = [
    [margin, margin],
    [right, margin],
    [right, below],
    [margin, below],
  ] as const;
  const codes = texts.map((text, i) => drawn(text, corners[i] ?? corners[0], side));
  const sheet = `<svg xmlns="http://www.w3.org/2000/svg" width="${w}" height="${h}"><rect width="${w}" height="${h}" fill="#dcdad4"/>${codes.join("")}</svg>`;
  const gravel = { width, height, channels: 3, background: "#776655", noise: { type: "gaussian", mean: 110, sigma: 30 } } as const;
  const lying = texts.length === 0 ? [] : [{ input: Buffer.from(sheet), left, top }];
  const ground = await sharp({ create: gravel }).blur(1.2).raw().toBuffer();
  return sharp(ground, { raw: { width, height, channels: 3 } })
    .composite(lying)
    .jpeg({ quality: 85 })
    .toBuffer();
}
