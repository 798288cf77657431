import type { HTTPRequest, Page } from "puppeteer";
import { type Outcome, ok, refuse } from "#core/outcome/index.ts";
import { ORIGIN, PAGE_ADDRESS, type Served } from "./origin.ts";

export interface Drawn {
  /** As the browser wrote it. */
  readonly pdf: Uint8Array;
  /** Addresses of images that did not decode. */
  readonly undecoded: readonly string[];
  /** Texts of the headings, in the order of the page. */
  readonly headings: readonly string[];
  /** For each heading the id of the part that it stands in, or nothing. */
  readonly parts: readonly string[];
  /** Ids of the parts that the contents name, in their order. */
  readonly listed: readonly string[];
}

// Nothing of ours is a script, and nothing that somebody typed may become one, load or go anywhere.
const POLICY = `default-src 'none'; style-src 'unsafe-inline'; font-src ${ORIGIN}; img-src ${ORIGIN} data:; form-action 'none'; frame-src 'none'; base-uri 'none'`;

/** What a page loads, by address. */
export type Files = ReadonlyMap<string, Served>;

const none: Promise<Files> = Promise.resolve(new Map());

/** Loads a page from memory alone, waits for its fonts and for every image, and prints it. `later`: files that are still on their way. */
export async function draw(page: Page, html: string, files: Files, later = none): Promise<Outcome<Drawn>> {
  await page.setJavaScriptEnabled(false);
  await page.setRequestInterception(true);
  serve(page, html, files, later);
  await page.goto(PAGE_ADDRESS, { waitUntil: "load", timeout: 0 });
  return printed(page, new Map([...files, ...(await later)]));
}

/**
 * Prints a page that was drawn with another body: as if it were drawn anew, in half the browser's time. Its head has to be the same.
 * An address is asked for once: what was not there, or was another picture, needs another.
 */
export async function drawAgain(page: Page, html: string, files: Files): Promise<Outcome<Drawn>> {
  serve(page, html, files, none);
  await page.evaluate(
    `document.body.replaceWith(document.adoptNode(new DOMParser().parseFromString(${JSON.stringify(html)}, "text/html").body))`,
  );
  return printed(page, files);
}

function serve(page: Page, html: string, files: Files, later: Promise<Files>): void {
  page.removeAllListeners("request");
  page.on("request", (request) => void answer(request, html, files, later).catch(() => refused(request)));
}

/** What cannot be answered must not keep the page from loading: whoever waits for the page is told why by `later` itself. */
const refused = (request: HTTPRequest): void => void request.abort().catch(() => undefined);

async function printed(page: Page, files: Files): Promise<Outcome<Drawn>> {
  // As text, since the page's own world has other globals than this file.
  const { undecoded, fonts, ...named } = (await page.evaluate(whatIsThere(wholeOf(files)))) as Omit<Drawn, "pdf"> & {
    fonts: string[];
  };
  if (fonts.length > 0) return refuse("print-failed", "print/fonts", { why: "font", fonts: fonts.join(", ") });
  if (page.url() !== PAGE_ADDRESS) return refuse("print-failed", "print/page", { why: "page-left" });
  if (undecoded.length > 0) return ok({ pdf: new Uint8Array(), undecoded, ...named });
  const pdf = await page.pdf({ printBackground: true, preferCSSPageSize: true, tagged: true, outline: true, timeout: 0 });
  return ok({ pdf, undecoded, ...named });
}

const wholeOf = (files: Files): readonly string[] => [...files].filter(([, { whole }]) => whole).map(([address]) => address);

/** Images that are known to be whole have only come: the browser takes each of those that it is asked to decode through a frame. */
const whatIsThere = (whole: readonly string[]): string => `(async () => {
  const whole = new Set(${JSON.stringify(whole)});
  const shown = (image) => (whole.has(image.src) && image.naturalWidth > 0 ? Promise.resolve() : image.decode());
  await document.fonts.ready;
  const images = await Promise.all([...document.images].map((image) => shown(image).then(() => undefined, () => image.src)));
  const faces = [...document.fonts].filter((face) => face.status === "error" || face.status === "loading");
  const headings = [...document.querySelectorAll("h1, h2, h3")].map((heading) => heading.textContent.trim().replace(/\\s+/g, " "));
  const parts = [...document.querySelectorAll("h1, h2, h3")].map((heading) => heading.closest("[id]")?.id ?? "");
  const listed = [...document.querySelectorAll("nav a")].map(({ hash }) => hash.slice(1));
  return { headings, parts, listed, undecoded: images.filter((address) => address !== undefined), fonts: faces.map((face) => face.family + " " + face.weight) };
})()`;

async function answer(request: HTTPRequest, html: string, files: Files, later: Promise<Files>): Promise<void> {
  if (request.method() === "GET" && request.url() === PAGE_ADDRESS && request.isNavigationRequest()) {
    return request.respond({
      status: 200,
      contentType: "text/html; charset=utf-8",
      headers: { "content-security-policy": POLICY },
      body: html,
    });
  }
  const asked = request.method() === "GET" && !request.isNavigationRequest();
  const file = asked ? (files.get(request.url()) ?? (await later).get(request.url())) : undefined;
  if (file === undefined) return request.abort("blockedbyclient");
  // Fonts are fetched as if from elsewhere.
  return request.respond({
    status: 200,
    contentType: file.type,
    headers: { "access-control-allow-origin": ORIGIN },
    body: Buffer.from(file.bytes.buffer, file.bytes.byteOffset, file.bytes.byteLength),
  });
}
