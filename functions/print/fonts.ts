import { readFile } from "node:fs/promises";
import { fileURLToPath } from "node:url";
import { signsOf } from "./font-signs.ts";
import { fontAddress, type Served } from "./origin.ts";
import type { HasGlyph } from "./printable.ts";

/** The family of the record, under a name that no machine has, so that nothing but these files can stand in for it. */
const FAMILY = "Record Sans";
const WEIGHTS = [400, 600, 700];

export interface Fonts {
  /** `@font-face` rules with addresses on the print's own origin. */
  readonly css: string;
  /** By address. */
  readonly files: ReadonlyMap<string, Served>;
  readonly has: HasGlyph;
}

interface Face {
  readonly weight: number;
  readonly file: string;
  /** As the style sheet writes it. */
  readonly range: string;
  readonly bytes: Uint8Array;
}

/** All subsets of the font package, with their ranges as the package's own style sheets list them. */
export async function readFonts(): Promise<Fonts> {
  const faces = (await Promise.all(WEIGHTS.map(readWeight))).flat();
  const signs = WEIGHTS.map((weight) => new Set(faces.filter((face) => face.weight === weight).flatMap(signsInRange)));
  return {
    css: faces.map(rule).join("\n"),
    files: new Map(faces.map(({ file, bytes }) => [fontAddress(file), { type: "font/woff2", bytes }])),
    has: (sign) => signs.every((inWeight) => inWeight.has(sign)),
  };
}

const inPackage = (path: string): string => fileURLToPath(import.meta.resolve(`@fontsource/open-sans/${path}`));

async function readWeight(weight: number): Promise<Face[]> {
  const sheet = await readFile(inPackage(`${weight}.css`), "utf8");
  const listed = [...sheet.matchAll(/url\(\.\/files\/([\w.-]+\.woff2)\)[^}]*?unicode-range:\s*([^;]+);/g)];
  if (listed.length === 0) throw new Error(`The font package's style sheet ${weight}.css lists no font that print can read.`);
  return Promise.all(
    listed.map(async ([, file = "", range = ""]) => ({ weight, file, range, bytes: await readFile(inPackage(`files/${file}`)) })),
  );
}

const rule = ({ weight, file, range }: Face): string =>
  `@font-face{font-family:"${FAMILY}";font-weight:${weight};font-display:block;src:url("${fontAddress(file)}") format("woff2");unicode-range:${range}}`;

/** A glyph outside its file's range is never used. */
const signsInRange = ({ range, bytes }: Face): number[] => {
  const spans = range.split(",").map((span) => {
    const [from = "", to = from] = span.trim().replace(/^U\+/i, "").split("-");
    return [Number.parseInt(from, 16), Number.parseInt(to, 16)] as const;
  });
  return [...signsOf(bytes)].filter((sign) => spans.some(([from, to]) => sign >= from && sign <= to));
};
