import type { PDFDocument } from "@cantoo/pdf-lib";
import type { Page } from "puppeteer";
import { type Outcome, refuse } from "#core/outcome/index.ts";
import type { Store } from "#functions/shared/index.ts";
import type { WarmBrowser } from "./browser.ts";
import { type Drawn, draw } from "./draw.ts";
import type { FinishedAbout } from "./finish.ts";
import type { Fonts } from "./fonts.ts";
import type { Unsealed } from "./unsealed.ts";

export interface Printer {
  readonly store: Pick<Store, "get" | "put">;
  readonly browser: Pick<WarmBrowser, "withPage">;
  readonly fonts: Fonts;
  readonly unsealed?: Unsealed;
}

/** A document of any kind, drawn, with what its PDF is to say of itself. */
export interface Document extends Omit<FinishedAbout, "id"> {
  readonly pdf: PDFDocument;
  /** Photos that should be in it and are not. */
  readonly missing: readonly string[];
  /** Of a record: SHA-256 of each picture that is printed, by that of its original. */
  readonly pictures?: Readonly<Record<string, string>>;
  /** Of a record: SHA-256 of the pictures in each paper that is bound in, by that of the paper. */
  readonly papers?: Readonly<Record<string, readonly string[]>>;
}

const ROUNDS = 3;

/** Hands a page of the browser to `work`, and another one where the browser ended under it. `until`: as `withPage` has it. */
export async function onPage<T>(
  { browser }: Pick<Printer, "browser">,
  work: (page: Page) => Promise<Outcome<T>>,
  until?: Promise<unknown>,
): Promise<Outcome<T>> {
  let last: Outcome<T> = refuse("print-failed", "print", { why: "browser" });
  for (let round = 0; round < ROUNDS; round += 1) {
    last = await browser.withPage(work, until);
    if (last.ok || last.refusal.figures.why !== "browser-ended") return last;
  }
  return last;
}

/** Draws a page of print's own fonts. */
export const drawn = (printer: Pick<Printer, "browser" | "fonts">, html: string): Promise<Outcome<Drawn>> =>
  onPage(printer, (page) => draw(page, html, printer.fonts.files));
