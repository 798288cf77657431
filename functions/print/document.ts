import { type Outcome, refuse } from "#core/outcome/index.ts";
import type { Store } from "#functions/shared/index.ts";
import type { WarmBrowser } from "./browser.ts";
import { type Drawn, draw } from "./draw.ts";
import type { FinishedAbout } from "./finish.ts";
import type { Fonts } from "./fonts.ts";
import type { Served } from "./origin.ts";

export interface Printer {
  readonly store: Pick<Store, "get" | "put">;
  readonly browser: Pick<WarmBrowser, "withPage">;
  readonly fonts: Fonts;
}

/** A document of any kind as the browser wrote it, with what its PDF is to say of itself. */
export interface Document extends Omit<FinishedAbout, "id"> {
  readonly pdf: Uint8Array;
  /** Photos that should be in it and are not. */
  readonly missing: readonly string[];
  /** Of a record: SHA-256 of each picture that is printed, by that of its original. */
  readonly pictures?: Readonly<Record<string, string>>;
  /** Of a record: SHA-256 of the pictures in each paper that is bound in, by that of the paper. */
  readonly papers?: Readonly<Record<string, readonly string[]>>;
}

const ROUNDS = 3;

/** Draws a page of print's own fonts and these files, and again where the browser ended under it. */
export async function drawn(
  { browser, fonts }: Pick<Printer, "browser" | "fonts">,
  html: string,
  files: ReadonlyMap<string, Served> = new Map(),
): Promise<Outcome<Drawn>> {
  const served = new Map([...fonts.files, ...files]);
  let last: Outcome<Drawn> = refuse("print-failed", "print", { why: "browser" });
  for (let round = 0; round < ROUNDS; round += 1) {
    last = await browser.withPage((page) => draw(page, html, served));
    if (last.ok || last.refusal.figures.why !== "browser-ended") return last;
  }
  return last;
}
