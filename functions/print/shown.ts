import { createHash } from "node:crypto";
import { pageWords } from "#core/proof/index.ts";
import type { PrintShown } from "#functions/shared/index.ts";

/** Reads the finished file as whoever checks it will read it. The reader is loaded when the first record is printed. */
export async function shownIn(pdf: Uint8Array, files: Pick<PrintShown, "pictures" | "papers">): Promise<PrintShown> {
  const { getDocument } = await import("pdfjs-dist/legacy/build/pdf.mjs");
  // it takes the bytes that it is given away
  const task = getDocument({ data: pdf.slice(), useSystemFonts: false, verbosity: 0 });
  try {
    return { pages: await pageWords(await task.promise), ...files };
  } finally {
    await task.destroy();
  }
}

export const sha256Of = (content: string | Uint8Array): string => createHash("sha256").update(content).digest("hex");
