import { type Outcome, ok, refuse } from "#core/outcome/index.ts";
import { type Means, type RecordFile, recordFileOf } from "#core/proof/index.ts";

/** Reads a record out of a PDF. Refuses `pdf-not-read`. */
export async function readPdf(bytes: Uint8Array<ArrayBuffer>, { digest }: Pick<Means, "digest">): Promise<Outcome<RecordFile>> {
  const { getDocument } = await import("pdfjs-dist/legacy/build/pdf.mjs");
  // it takes the bytes that it is given away
  const task = getDocument({ data: bytes.slice(), useSystemFonts: false, verbosity: 0 });
  try {
    return ok(await recordFileOf(await task.promise, bytes, digest));
  } catch {
    return refuse("pdf-not-read", "pdf", {});
  } finally {
    await task.destroy();
  }
}
