import type { Digest } from "../ledger/index.ts";
import type { RecordFile } from "./check-result.ts";
import { type PagedDocument, pageWords } from "./page-words.ts";

/** As much of a reader of PDF files as is needed here. */
export interface PdfDocument extends PagedDocument {
  getAttachments(): Promise<unknown>;
  getAttachmentContent(name: string): Promise<Uint8Array | null>;
}

const signs = (text: string): readonly number[] => Array.from(text, (sign) => sign.charCodeAt(0));
const [BEGIN, END] = [signs("stream"), signs("endstream")];
const [LF, CR] = [0x0a, 0x0d];

const standsAt = (bytes: Uint8Array, at: number, wanted: readonly number[]): boolean => wanted.every((one, i) => bytes[at + i] === one);

/** Where the data of a stream begin when the word `stream` stands at `at`; it ends its line (ISO 32000-2, 7.3.8.1). */
function dataAfter(bytes: Uint8Array, at: number): number | undefined {
  const next = at + BEGIN.length;
  if (bytes[next] === LF) return next + 1;
  return bytes[next] === CR && bytes[next + 1] === LF ? next + 2 : undefined;
}

/** The end of the data before the word `endstream` at `at`: one end of line stands between. */
const dataBefore = (bytes: Uint8Array, at: number): number => {
  if (bytes[at - 1] === LF) return bytes[at - 2] === CR ? at - 2 : at - 1;
  return bytes[at - 1] === CR ? at - 1 : at;
};

/** Every JPEG that lies in a PDF as it is (filter DCTDecode alone): from its first two bytes, FF D8, to the end of its stream. */
export function jpegsIn(bytes: Uint8Array<ArrayBuffer>): readonly Uint8Array<ArrayBuffer>[] {
  const found: Uint8Array<ArrayBuffer>[] = [];
  let at = bytes.indexOf(BEGIN[0] as number);
  while (at >= 0) {
    const data = standsAt(bytes, at, BEGIN) ? dataAfter(bytes, at) : undefined;
    if (data !== undefined && bytes[data] === 0xff && bytes[data + 1] === 0xd8) {
      let end = bytes.indexOf(END[0] as number, data);
      while (end >= 0 && !standsAt(bytes, end, END)) end = bytes.indexOf(END[0] as number, end + 1);
      if (end < 0) end = bytes.length;
      found.push(bytes.slice(data, dataBefore(bytes, end)));
      at = end;
    }
    at = bytes.indexOf(BEGIN[0] as number, at + 1);
  }
  return found;
}

/** A record out of its PDF, that `document` has opened. What the reader throws is passed on: the file is no PDF. */
export async function recordFileOf(document: PdfDocument, bytes: Uint8Array<ArrayBuffer>, digest: Digest): Promise<RecordFile> {
  const attached = await document.getAttachments();
  const names = attached instanceof Map ? [...(attached as Map<string, unknown>).keys()] : [];
  const files = new Map<string, Uint8Array<ArrayBuffer>>();
  for (const name of names) files.set(name, Uint8Array.from((await document.getAttachmentContent(name)) ?? []));
  const pictures: string[] = [];
  for (const picture of jpegsIn(bytes)) pictures.push(await digest(picture));
  return { files, pages: await pageWords(document), pictures };
}
