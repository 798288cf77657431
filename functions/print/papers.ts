import { EncryptedPDFError, PDFDocument } from "@cantoo/pdf-lib";
import { type Outcome, ok, refuse } from "#core/outcome/index.ts";
import { jpegsIn } from "#core/proof/index.ts";
import type { HeadingKey, RecordModel } from "#core/record/index.ts";
import { paperKey, type Store } from "#functions/shared/index.ts";
import { drawsLightly, MOST_UNPACKED, opens } from "./paper-weight.ts";
import { sha256Of } from "./shown.ts";

/** Pages of the longest paper that is bound in. Own. */
export const MOST_PAPER_PAGES = 60;

export interface Paper {
  readonly sha256: string;
  readonly document: PDFDocument;
  readonly pages: number;
  readonly bytes: number;
  /** SHA-256 of the pictures that lie in the file as they are. */
  readonly pictures: readonly string[];
}

/** Why a paper is only listed: a word of the record. */
export type NotBound = Extract<HeadingKey, `enclosure-${string}`>;

/** Whether every page can be drawn onto another: tried on a sheet that nobody keeps, since a damaged one shows itself only then. */
async function canBeDrawn(document: PDFDocument): Promise<boolean> {
  try {
    const tried = await PDFDocument.create();
    const drawn = await tried.embedPages(document.getPages());
    const page = tried.addPage();
    for (const one of drawn) page.drawPage(one);
    await tried.save();
    return true;
  } catch {
    return false;
  }
}

/** Opens a paper. Refuses `paper-locked`, `paper-unreadable`, `paper-too-long`, `paper-too-heavy`. */
export async function readPaper(bytes: Uint8Array): Promise<Outcome<PDFDocument>> {
  const heavy = refuse("paper-too-heavy", "paper", { most: MOST_UNPACKED / 1_000_000 });
  const way = opens(bytes);
  if (way !== "lightly") return way === "paper-locked" ? refuse("paper-locked", "paper") : heavy;
  try {
    const document = await PDFDocument.load(bytes, { updateMetadata: false, ignoreEncryption: false });
    if (document.isEncrypted) return refuse("paper-locked", "paper");
    const pages = document.getPageCount();
    if (pages > MOST_PAPER_PAGES) return refuse("paper-too-long", "paper", { pages, most: MOST_PAPER_PAGES });
    if (!drawsLightly(document)) return heavy;
    // an empty page, the back of a scan, may have no content at all
    for (const { node } of document.getPages())
      if (node.Contents() === undefined) node.addContentStream(document.context.register(document.context.stream("")));
    return pages > 0 && (await canBeDrawn(document)) ? ok(document) : refuse("paper-unreadable", "paper");
  } catch (thrown) {
    return refuse(thrown instanceof EncryptedPDFError ? "paper-locked" : "paper-unreadable", "paper");
  }
}

const words = {
  "paper-locked": "enclosure-locked",
  "paper-too-long": "enclosure-too-long",
  "paper-too-heavy": "enclosure-too-large",
} as const;

/** The papers that the model names, each as it can be bound in or why not; a store that is down is `store-unavailable`. */
export async function fetchPapers(
  { enclosures = [] }: RecordModel,
  company: string,
  store: Pick<Store, "get">,
): Promise<Outcome<ReadonlyMap<string, Paper | NotBound>>> {
  const papers = new Map<string, Paper | NotBound>();
  for (const { paper: sha256 } of enclosures) {
    const found = await store.get(paperKey(company, sha256));
    if (!found.ok && found.refusal.code === "store-unavailable") return found;
    const bytes = found.ok ? await found.value.bytes() : found;
    if (!bytes.ok || sha256Of(bytes.value) !== sha256) {
      papers.set(sha256, "enclosure-not-there");
      continue;
    }
    const read = await readPaper(bytes.value);
    if (!read.ok) papers.set(sha256, words[read.refusal.code as keyof typeof words] ?? "enclosure-unreadable");
    else {
      const pictures = jpegsIn(bytes.value).map(sha256Of);
      papers.set(sha256, { sha256, document: read.value, pages: read.value.getPageCount(), bytes: bytes.value.length, pictures });
    }
  }
  return ok(papers);
}

/** The same with those left out that do not fit into `room` bytes beside the ones before them. */
export function fittingPapers(papers: ReadonlyMap<string, Paper | NotBound>, room: number): ReadonlyMap<string, Paper | NotBound> {
  let left = room;
  const fitting = new Map<string, Paper | NotBound>();
  for (const [sha256, paper] of papers) {
    const fits = typeof paper === "string" || paper.bytes <= left;
    if (fits && typeof paper !== "string") left -= paper.bytes;
    fitting.set(sha256, fits ? paper : "enclosure-too-large");
  }
  return fitting;
}
