import { createHash } from "node:crypto";
import { type Outcome, ok } from "#core/outcome/index.ts";
import type { PrintAnswer, PrintRequest } from "#functions/shared/index.ts";
import { drawDesignCheck } from "./design-check.ts";
import type { Document, Printer } from "./document.ts";
import { finish } from "./finish.ts";
import { drawRecord } from "./record.ts";

const drawnOf = (request: PrintRequest, printer: Printer): Promise<Outcome<Document>> => {
  switch (request.kind) {
    case "record":
      return drawRecord(request, printer);
    case "design-check":
      return drawDesignCheck(request, printer);
  }
};

/** Prints a document and puts it into the store. Refusals: `store-unavailable`, `print-failed` (with why). */
export async function print(request: PrintRequest, printer: Printer): Promise<Outcome<PrintAnswer>> {
  const document = await drawnOf(request, printer);
  if (!document.ok) return document;
  const { pdf: drawn, missing, ...about } = document.value;
  const { pdf, pages } = await finish(drawn, { ...about, id: sha256(JSON.stringify(request.model)).slice(0, 32) });
  const hash = sha256(pdf);
  const stored = await printer.store.put(request.key, pdf, { length: pdf.length, type: "application/pdf", sha256: hash });
  if (!stored.ok) return stored;
  return ok({ sha256: hash, bytes: pdf.length, pages, missing });
}

const sha256 = (content: string | Uint8Array): string => createHash("sha256").update(content).digest("hex");
