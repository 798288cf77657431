import { type Outcome, ok, refuse } from "#core/outcome/index.ts";
import type { PrintAnswer, PrintPaper, PrintRequest, PrintSealing } from "#functions/shared/index.ts";
import { drawCards } from "./cards.ts";
import { drawDesignCheck } from "./design-check.ts";
import type { Document, Printer } from "./document.ts";
import { attachLater, finish } from "./finish.ts";
import { readPaper } from "./papers.ts";
import { drawRecord } from "./record.ts";
import { drawReport } from "./report.ts";
import { sha256Of, shownIn } from "./shown.ts";

type PrintDocument = Exclude<PrintRequest, PrintSealing | PrintPaper>;

const drawnOf = (request: PrintDocument, printer: Printer): Promise<Outcome<Document>> => {
  switch (request.kind) {
    case "record":
      return drawRecord(request, printer);
    case "design-check":
      return drawDesignCheck(request, printer);
    case "cards":
      return drawCards(request, printer);
    case "report":
      return drawReport(request, printer);
  }
};

/** Prints a document and puts it into the store. Refusals: `store-unavailable`, `print-failed` (with why). */
export async function print(request: PrintRequest, printer: Printer): Promise<Outcome<PrintAnswer>> {
  if (request.kind === "sealing") return sealed(request, printer);
  if (request.kind === "paper") return counted(request, printer.store);
  const document = await drawnOf(request, printer);
  if (!document.ok) return document;
  const { pdf: drawn, missing, pictures, papers = {}, ...about } = document.value;
  const { pdf, pages, document: finished } = await finish(drawn, { ...about, id: sha256Of(JSON.stringify(request.model)).slice(0, 32) });
  const [stored, shown] = await Promise.all([
    put(request.key, pdf, printer.store),
    pictures === undefined ? {} : shownIn(pdf, { pictures, papers }).then((all) => ({ shown: all })),
  ]);
  if (!stored.ok) return stored;
  if (request.kind === "record") printer.unsealed?.keep(request.key, finished);
  return ok({ ...stored.value, pages, missing, ...shown });
}

/** Opens a paper as it will be opened when it is bound in. Refuses what `readPaper` refuses, and `paper-unknown`. */
async function counted({ key }: PrintPaper, store: Printer["store"]): Promise<Outcome<PrintAnswer>> {
  const found = await store.get(key);
  if (!found.ok) return found.refusal.code === "store-unavailable" ? found : refuse("paper-unknown", "paper");
  const bytes = await found.value.bytes();
  if (!bytes.ok) return bytes;
  const paper = await readPaper(bytes.value);
  return paper.ok
    ? ok({ sha256: sha256Of(bytes.value), bytes: bytes.value.length, pages: paper.value.getPageCount(), missing: [] })
    : paper;
}

/** Attaches to what lies in the store already. Refuses `record-unknown` where nothing lies there. */
async function sealed({ key, attachments, issuedAt }: PrintSealing, { store, unsealed }: Printer): Promise<Outcome<PrintAnswer>> {
  const printed = unsealed?.take(key);
  const finished = printed ? ok(printed) : await fetched(key, store);
  if (!finished.ok) return finished;
  const { pdf, pages } = await attachLater(finished.value, attachments, issuedAt);
  const stored = await put(key, pdf, store);
  return stored.ok ? ok({ ...stored.value, pages, missing: [] }) : stored;
}

async function fetched(key: string, store: Printer["store"]): Promise<Outcome<Uint8Array>> {
  const found = await store.get(key);
  return found.ok ? found.value.bytes() : found;
}

async function put(key: string, pdf: Uint8Array, store: Printer["store"]): Promise<Outcome<Pick<PrintAnswer, "sha256" | "bytes">>> {
  const sha256 = sha256Of(pdf);
  const stored = await store.put(key, pdf, { length: pdf.length, type: "application/pdf", sha256 });
  return stored.ok ? ok({ sha256, bytes: pdf.length }) : stored;
}
