import { AFRelationship, PDFDocument, PDFHexString, PDFName } from "@cantoo/pdf-lib";
import type { PrintAttachment } from "#functions/shared/index.ts";
import { documentData } from "./document-data.ts";
import { nameOutline } from "./outline.ts";
import { renumberStructureIds } from "./structure-ids.ts";

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
}

/**
 * Attaches the files and writes title, language, dates and id, all from the record, so that nothing of the moment of printing
 * is in it. Two prints may still differ in the browser's own bytes now and then: no seal rests on them.
 */
export async function finish(printed: Uint8Array, about: FinishedAbout): Promise<{ readonly pdf: Uint8Array; readonly pages: number }> {
  const document = await PDFDocument.load(renumberStructureIds(printed), { updateMetadata: false });
  nameOutline(document, about.headings);
  const at = new Date(about.issuedAt);
  for (const { name, type, text, relationship, description } of about.attachments) {
    await document.attach(new TextEncoder().encode(text), name, {
      mimeType: type,
      description: description ?? name,
      creationDate: at,
      modificationDate: at,
      afRelationship: AFRelationship[relationship],
    });
  }
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
  const pdf = await document.save({ useObjectStreams: false, addDefaultPage: false, updateFieldAppearances: false });
  return { pdf, pages: document.getPageCount() };
}
