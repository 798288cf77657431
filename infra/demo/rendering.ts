import sharp from "sharp";
import { cardLayout, cardText } from "#core/job/index.ts";
import { digest } from "../node-digest.ts";
import { type Light, type PrintedCode, render, type Sheet, sheetSurface } from "../scenes/index.ts";
import { exifOf } from "./drawings.ts";
import { lettering } from "./lettering.ts";
import type { Scene } from "./scenes.ts";

/** What the demo's cards are printed on. */
export const PAPER = "letter";

/** The card of a step as it is printed: metres. */
export async function printedCard(company: string, job: string, step: string): Promise<Sheet> {
  const { width, height, codes } = cardLayout(PAPER);
  const printed: PrintedCode[] = [];
  for (const [place, { name, corners }] of codes.entries()) {
    const text = await cardText(digest, { company, job, step }, { paper: PAPER, place: place as 0 | 1 | 2 | 3 });
    if (!text.ok) throw new Error(`a card was refused: ${text.refusal.code}`);
    const [{ x, y }, right] = corners;
    printed.push({ name, x: x / 1e6, y: y / 1e6, side: (right.x - x) / 1e6, text: text.value });
  }
  return { width: width / 1e6, height: height / 1e6, codes: printed };
}

const LIGHT: Light = { sun: [0.36, -0.48, 0.8], sky: 0.35, exposure: 0.9, shadows: false };
const SENSOR = { blur: 0.6, noise: 0.01, seed: 41 };
const NOTICE = "RENDERING - NOT A PHOTOGRAPH";
const HEIGHT = 22;

/** The notice dark with a light rim, in the picture's lower left corner. */
const notice = (width: number, height: number): string => {
  const path = lettering(NOTICE, 24, height - 24 - HEIGHT, HEIGHT);
  const line = (colour: string, wide: number): string =>
    `<path d="${path}" fill="none" stroke="${colour}" stroke-width="${wide}" stroke-linecap="round" stroke-linejoin="round"/>`;
  return `<svg xmlns="http://www.w3.org/2000/svg" width="${width}" height="${height}">${line("#ffffff", 8)}${line("#a3261b", 3)}</svg>`;
};

/** A scene with a card in it as a JPEG such as a phone's camera leaves, with moment, zone and place in EXIF. */
export async function rendering(
  { surfaces, camera, card }: Scene,
  printed: Sheet,
  taken: Parameters<typeof exifOf>[0],
): Promise<Uint8Array> {
  const {
    pixels,
    window: { width, height },
  } = render([...surfaces, sheetSurface(printed, card, 100)], camera, LIGHT, SENSOR);
  return sharp(pixels, { raw: { width, height, channels: 3 } })
    .composite([{ input: Buffer.from(notice(width, height)) }])
    .jpeg({ quality: 85 })
    .withExif(exifOf(taken, "Rendering, not a photograph"))
    .toBuffer();
}
