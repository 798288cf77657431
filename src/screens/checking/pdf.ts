import libraryAddress from "pdfjs-dist/legacy/build/pdf.min.mjs?url";
import workerAddress from "pdfjs-dist/legacy/build/pdf.worker.min.mjs?url";
import { type Outcome, ok, refuse } from "../../outcome/index.ts";
import { type Means, type PdfDocument, type RecordFile, recordFileOf, rulesDigests } from "../../proof/index.ts";

/** As much of the reader as is used here. */
interface Reader {
  readonly GlobalWorkerOptions: { workerPort: Worker | null };
  getDocument(asked: object): { readonly promise: Promise<PdfDocument>; destroy(): Promise<void> };
}

interface Policies {
  createPolicy(name: string, rules: { createScriptURL(url: string): string }): { createScriptURL(url: string): string };
}

export const rulesAddress = (version: number): string => `/rules/${version}.js`;

/** Everything that checking a record loads besides the app itself. */
const further = (): readonly string[] => [
  libraryAddress,
  workerAddress,
  ...Object.keys(rulesDigests).map((one) => rulesAddress(Number(one))),
];

/** Has it all come to this device now, so that a record can be checked without signal later. */
export const keepForLater = async (): Promise<boolean> => {
  const kept = await Promise.all(
    further().map((address) =>
      fetch(address).then(
        ({ ok: came }) => came,
        () => false,
      ),
    ),
  );
  return kept.every((came) => came);
};

let reader: Promise<Reader> | undefined;

async function startedReader(): Promise<Reader> {
  const { trustedTypes } = globalThis as { trustedTypes?: Policies };
  const policy = trustedTypes?.createPolicy("asburied-checking", { createScriptURL: () => workerAddress });
  // not built into the app: who never checks a record never loads it
  const library = (await import(/* @vite-ignore */ libraryAddress)) as Reader;
  library.GlobalWorkerOptions.workerPort = new Worker(policy?.createScriptURL(workerAddress) ?? workerAddress, { type: "module" });
  return library;
}

/** Reads a record out of a PDF, on this device alone. Refuses `pdf-not-read`. */
export async function readPdf(bytes: Uint8Array<ArrayBuffer>, { digest }: Pick<Means, "digest">): Promise<Outcome<RecordFile>> {
  reader ??= startedReader();
  // without signal the first try may find nothing; the next one asks again
  const { getDocument } = await reader.catch((thrown: unknown) => {
    reader = undefined;
    throw thrown;
  });
  const task = getDocument({ data: bytes.slice(), useSystemFonts: false, useWasm: false, verbosity: 0 });
  try {
    return ok(await recordFileOf(await task.promise, bytes, digest));
  } catch {
    return refuse("pdf-not-read", "pdf", {});
  } finally {
    await task.destroy();
  }
}
