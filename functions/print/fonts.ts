import { readFile } from "node:fs/promises";
import { fileURLToPath } from "node:url";
import { fontAddress, type Served } from "./origin.ts";

/** The family of the record, under a name that no machine has, so that nothing but these files can stand in for it. */
const FAMILY = "Record Sans";
const WEIGHTS = [400, 600, 700];

export interface Fonts {
  /** `@font-face` rules with addresses on the print's own origin. */
  readonly css: string;
  /** By address. */
  readonly files: ReadonlyMap<string, Served>;
}

/**
 * All subsets of the font package with their ranges, as the package's own style sheets list them: a sign outside a
 * declared range would silently be drawn in whatever the machine has.
 */
export async function readFonts(): Promise<Fonts> {
  const sheets = await Promise.all(WEIGHTS.map((weight) => readFile(inPackage(`${weight}.css`), "utf8")));
  const faces = sheets.flatMap((sheet, at) => facesOf(sheet).map((face) => ({ ...face, weight: WEIGHTS[at] as number })));
  if (faces.length === 0) throw new Error("The font package's style sheets hold no font that print can read.");
  const files = await Promise.all(
    faces.map(async ({ file }) => [fontAddress(file), { type: "font/woff2", bytes: await readFile(inPackage(`files/${file}`)) }] as const),
  );
  const css = faces.map(
    ({ file, range, weight }) =>
      `@font-face{font-family:"${FAMILY}";font-weight:${weight};font-display:block;src:url("${fontAddress(file)}") format("woff2");unicode-range:${range}}`,
  );
  return { css: css.join("\n"), files: new Map(files) };
}

const inPackage = (path: string): string => fileURLToPath(import.meta.resolve(`@fontsource/open-sans/${path}`));

const facesOf = (sheet: string): { file: string; range: string }[] =>
  [...sheet.matchAll(/url\(\.\/files\/([\w.-]+\.woff2)\)[^}]*?unicode-range:\s*([^;]+);/g)].map(([, file = "", range = ""]) => ({
    file,
    range,
  }));
