import { parentPort } from "node:worker_threads";
import { getDocument } from "pdfjs-dist/legacy/build/pdf.mjs";
import { pageWords } from "#core/proof/index.ts";

/** The words of each page, or why there are none. */
export type WordsRead = { readonly pages: readonly string[] } | { readonly failed: string };

async function read(pdf: Uint8Array): Promise<WordsRead> {
  const task = getDocument({ data: pdf, useSystemFonts: false, verbosity: 0 });
  try {
    return { pages: await pageWords(await task.promise) };
  } finally {
    await task.destroy();
  }
}

parentPort?.on("message", (pdf: Uint8Array) => {
  void read(pdf)
    .catch((thrown: Error): WordsRead => ({ failed: thrown.message }))
    .then((words) => parentPort?.postMessage(words));
});
