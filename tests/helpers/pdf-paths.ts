import { getDocument, OPS } from "pdfjs-dist/legacy/build/pdf.mjs";

/** A filled box of a page, millimetres from its upper left corner, y down. */
export interface FilledBox {
  readonly left: number;
  readonly top: number;
  readonly right: number;
  readonly bottom: number;
}

type Matrix = readonly [number, number, number, number, number, number];
const times = ([a, b, c, d, e, f]: Matrix, [g, h, i, j, k, l]: Matrix): Matrix => [
  a * g + c * h,
  b * g + d * h,
  a * i + c * j,
  b * i + d * j,
  a * k + c * l + e,
  b * k + d * l + f,
];
const MM = 25.4 / 72;

/** Points of the path's parts, each part from its first point. pdf.js writes 0 move, 1 line, 2 and 3 curves, 4 close. */
function partsOf(data: ArrayLike<number>): (readonly [number, number])[][] {
  const parts: (readonly [number, number])[][] = [];
  const coordinates = [2, 2, 6, 4, 0];
  for (let at = 0; at < data.length; ) {
    const kind = data[at] as number;
    const count = coordinates[kind] ?? 0;
    if (kind === 0) parts.push([]);
    if (count > 0) parts.at(-1)?.push([data[at + count - 1] as number, data[at + count] as number]);
    at += 1 + count;
  }
  return parts;
}

/** Every piece of text of each page, with the box about its letters. */
export async function wordsPlaced(bytes: Uint8Array): Promise<readonly (readonly (FilledBox & { readonly text: string })[])[]> {
  const task = getDocument({ data: bytes.slice(), useSystemFonts: false, verbosity: 0 });
  const document = await task.promise;
  try {
    const pages = Array.from({ length: document.numPages }, async (_, at) => {
      const page = await document.getPage(at + 1);
      const paper = page.view[3] as number;
      return (await page.getTextContent()).items.flatMap((item) => {
        if (!("str" in item) || item.str.trim() === "") return [];
        const [, , , , x, y] = item.transform as unknown as Matrix;
        const [left, bottom] = [x * MM, (paper - y) * MM];
        return [{ text: item.str, left, bottom, right: left + item.width * MM, top: bottom - item.height * MM }];
      });
    });
    return await Promise.all(pages);
  } finally {
    await task.destroy();
  }
}

/** The boxes about everything that a page fills with its own colour, in the page's order; read by pdf.js from the file's own paths. */
export async function filledBoxes(bytes: Uint8Array): Promise<readonly (readonly FilledBox[])[]> {
  const task = getDocument({ data: bytes.slice(), useSystemFonts: false, verbosity: 0 });
  const document = await task.promise;
  try {
    const pages: FilledBox[][] = [];
    for (let number = 1; number <= document.numPages; number += 1) {
      const page = await document.getPage(number);
      const height = page.view[3] as number;
      const { fnArray, argsArray } = await page.getOperatorList();
      const boxes: FilledBox[] = [];
      let matrix: Matrix = [1, 0, 0, 1, 0, 0];
      const kept: Matrix[] = [];
      for (const [at, operation] of fnArray.entries()) {
        const args = argsArray[at] as readonly unknown[];
        if (operation === OPS.save) kept.push(matrix);
        else if (operation === OPS.restore) matrix = kept.pop() ?? matrix;
        else if (operation === OPS.transform) matrix = times(matrix, args as unknown as Matrix);
        else if (operation === OPS.constructPath && (args[0] === OPS.fill || args[0] === OPS.eoFill)) {
          const [data] = args[1] as readonly ArrayLike<number>[];
          for (const part of partsOf(data ?? [])) {
            const spots = part
              .map(([x, y]) => times(matrix, [1, 0, 0, 1, x, y]))
              .map(([, , , , x, y]) => [x * MM, (height - y) * MM] as const);
            const [xs, ys] = [spots.map(([x]) => x), spots.map(([, y]) => y)];
            boxes.push({ left: Math.min(...xs), right: Math.max(...xs), top: Math.min(...ys), bottom: Math.max(...ys) });
          }
        }
      }
      pages.push(boxes);
    }
    return pages;
  } finally {
    await task.destroy();
  }
}
