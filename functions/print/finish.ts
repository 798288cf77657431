import { AFRelationship, type PDFDocument, PDFHexString, PDFName } from "@cantoo/pdf-lib";
import type { PrintAttachment } from "#functions/shared/index.ts";
import { type Bound, bind } from "./bind.ts";
import { documentData } from "./document-data.ts";
import { nameOutline } from "./outline.ts";
import { opened, saved } from "./own-pdf.ts";
import { putPictures, type StandIns } from "./stand-ins.ts";

export interface FinishedAbout {
  readonly title: string;
  readonly language: string;
  /** The document's own date, milliseconds; never the printer's clock. */
  readonly issuedAt: number;
  /** 32 hex digits of what was printed. */
  readonly id: string;
  /** Texts of the headings, for the outline. */
  readonly headings: readonly string[];
  readonly attachments: readonly PrintAttachment[];
  /** Pictures that take the places of their stand-ins. */
  readonly standIns?: StandIns["pictures"];
  /** Papers whose pages are drawn onto the last pages, which were left empty for them. */
  readonly bound?: Bound;
}

export interface Finished {
  readonly pdf: Uint8Array;
  readonly pages: number;
  /** What was written: as if it were read from the file. */
  readonly document: PDFDocument;
}

/**
 * Attaches the files and writes title, language, dates and id, all from the record, so that nothing of the moment of printing
 * is in it. Two prints may still differ in the browser's own bytes now and then: no seal rests on them.
 */
export async function finish(document: PDFDocument, about: FinishedAbout): Promise<Finished> {
  nameOutline(document, about.headings);
  if (about.standIns) putPictures(document, about.standIns);
  if (about.bound) await bind(document, about.bound);
  const at = new Date(about.issuedAt);
  await attach(document, about.attachments, at);
  document.setTitle(about.title, { showInWindowTitleBar: true });
  document.setLanguage(about.language);
  document.setProducer("Asburied");
  document.setCreator("Asburied");
  document.setCreationDate(at);
  document.setModificationDate(at);
  const data = new TextEncoder().encode(documentData(about.title, about.language, at));
  document.catalog.set(
    PDFName.of("Metadata"),
    document.context.register(document.context.stream(data, { Type: "Metadata", Subtype: "XML" })),
  );
  document.context.trailerInfo.ID = document.context.obj([PDFHexString.of(about.id), PDFHexString.of(about.id)]);
  return { pdf: await saved(document), pages: document.getPageCount(), document };
}

/** Puts more files into a PDF that was finished; everything else of it stays. */
export async function attachLater(
  finished: Uint8Array | PDFDocument,
  attachments: readonly PrintAttachment[],
  issuedAt: number,
): Promise<Finished> {
  const document = finished instanceof Uint8Array ? await opened(finished) : finished;
  await attach(document, attachments, new Date(issuedAt));
  return { pdf: await saved(document), pages: document.getPageCount(), document };
}

async function attach(document: PDFDocument, attachments: readonly PrintAttachment[], at: Date): Promise<void> {
  for (const { name, type, text, relationship, description } of attachments) {
    await document.attach(new TextEncoder().encode(text), name, {
      mimeType: type,
      description: description ?? name,
      creationDate: at,
      modificationDate: at,
      afRelationship: AFRelationship[relationship],
    });
  }
}
