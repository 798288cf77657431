import { ParseSpeeds, PDFDocument } from "@cantoo/pdf-lib";
import { renumberStructureIds } from "./structure-ids.ts";

// The library pauses after so many objects, a millisecond at least each time: longer than its work, where nobody waits beside it.
const WITHOUT_PAUSE = Number.POSITIVE_INFINITY;

/** Opens a PDF that the browser or print itself wrote; one that somebody sent is opened as a paper. */
export const opened = (pdf: Uint8Array): Promise<PDFDocument> =>
  PDFDocument.load(pdf, { updateMetadata: false, parseSpeed: ParseSpeeds.Fastest });

/** Opens what the browser has just written; it counts ids over its whole life. */
export const openedAnew = (drawn: Uint8Array): Promise<PDFDocument> => opened(renumberStructureIds(drawn));

/** Its bytes, with every object in plain sight. */
export const saved = (document: PDFDocument): Promise<Uint8Array> =>
  document.save({ useObjectStreams: false, addDefaultPage: false, updateFieldAppearances: false, objectsPerTick: WITHOUT_PAUSE });
