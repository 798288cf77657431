import type { PDFDocument } from "@cantoo/pdf-lib";

/** Own: a seal is asked for as soon as its record is answered. */
const KEPT_MS = 20_000;

/**
 * The record that was printed last, as it lies in the store, for its seal: to be put into it without the file being fetched and read
 * again. Whoever seals another one first, or later, finds it in the store.
 */
export class Unsealed {
  #kept: { readonly key: string; readonly document: PDFDocument } | undefined;
  #timer: NodeJS.Timeout | undefined;

  keep(key: string, document: PDFDocument): void {
    clearTimeout(this.#timer);
    this.#kept = { key, document };
    this.#timer = setTimeout(() => {
      this.#kept = undefined;
    }, KEPT_MS);
    this.#timer.unref();
  }

  /** Hands it over, once. */
  take(key: string): PDFDocument | undefined {
    const kept = this.#kept?.key === key ? this.#kept.document : undefined;
    this.#kept = undefined;
    clearTimeout(this.#timer);
    return kept;
  }
}
