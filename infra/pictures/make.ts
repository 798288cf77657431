import "../node-version.mjs";
import { mkdtemp, readFile, rm, stat } from "node:fs/promises";
import { createServer } from "node:http";
import type { AddressInfo } from "node:net";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import puppeteer, { type Browser } from "puppeteer";
import { launchOptions } from "../browser/index.ts";
import { runDemo } from "../demo/index.ts";
import { startStack } from "../local/index.ts";

/** `npm run pictures`: the README's pictures, made from the demo company on a fresh temporary stack. */
const here = (name: string): string => fileURLToPath(new URL(name, import.meta.url));
const LARGEST = 250_000;

/** A clearance as the crew sees it at the edge of the hole. */
async function clearancePicture(browser: Browser, link: string, job: string): Promise<string> {
  const file = here("./clearance.png");
  const page = await browser.newPage();
  await page.setViewport({ width: 360, height: 740, deviceScaleFactor: 2 });
  await page.goto(link);
  await page.goto(new URL(`/jobs/${job}`, link).href);
  // once a day the page asks whether this is the job that the crew stands in
  await page.locator(".right-job > .target.main").click();
  await page.waitForSelector(".large-clearance");
  await page.evaluate("document.fonts.ready");
  await page.screenshot({ path: file as `${string}.png`, optimizeForSpeed: false });
  await page.close();
  return file;
}

const drawer = `<!doctype html><meta charset="utf-8"><canvas></canvas><script type="module">
  import { getDocument, GlobalWorkerOptions } from "/pdf.mjs";
  GlobalWorkerOptions.workerSrc = "/pdf.worker.mjs";
  const { promise } = getDocument({ url: "/record.pdf", isEvalSupported: false });
  const page = await (await promise).getPage(1);
  const viewport = page.getViewport({ scale: 1.35 });
  const canvas = document.querySelector("canvas");
  canvas.width = viewport.width;
  canvas.height = viewport.height;
  await page.render({ canvas, canvasContext: canvas.getContext("2d"), viewport }).promise;
  document.title = "drawn";
</script>`;

/** The record's first page, drawn in the browser by pdfjs, which is handed over as files and not imported. */
async function recordPicture(browser: Browser, pdf: Uint8Array): Promise<string> {
  const file = here("./record.png");
  const pdfjs = (name: string): Promise<Buffer> => readFile(fileURLToPath(import.meta.resolve(`pdfjs-dist/build/${name}`)));
  const served: Readonly<Record<string, readonly [string, string | Uint8Array]>> = {
    "/": ["text/html", drawer],
    "/pdf.mjs": ["text/javascript", await pdfjs("pdf.min.mjs")],
    "/pdf.worker.mjs": ["text/javascript", await pdfjs("pdf.worker.min.mjs")],
    "/record.pdf": ["application/pdf", pdf],
  };
  const server = createServer((request, response) => {
    const [type, body] = served[request.url ?? ""] ?? ["text/plain", ""];
    response.writeHead(200, { "content-type": type }).end(body);
  });
  await new Promise<void>((listening) => server.listen(0, "127.0.0.1", listening));
  try {
    const page = await browser.newPage();
    await page.setViewport({ width: 900, height: 1200 });
    await page.goto(`http://127.0.0.1:${(server.address() as AddressInfo).port}/`);
    await page.waitForFunction("document.title === 'drawn'");
    const canvas = await page.$("canvas");
    await canvas?.screenshot({ path: file as `${string}.png` });
    await page.close();
  } finally {
    server.closeAllConnections();
    server.close();
  }
  return file;
}

const directory = await mkdtemp(join(tmpdir(), "asburied-pictures-"));
const stack = await startStack({ directory, demoLinks: true, sweepEvery: 2_000 });
try {
  const demo = await runDemo({ edge: stack.edge, operatorKey: stack.secrets.operatorKey, log: console.log });
  const browser = await puppeteer.launch(await launchOptions());
  try {
    const files = [await clearancePicture(browser, demo.links.crew, demo.jobs[1] ?? ""), await recordPicture(browser, demo.pdf)];
    for (const file of files) {
      const { size } = await stat(file);
      console.log(`${file}: ${Math.round(size / 1000)} kB`);
      if (size > LARGEST) throw new Error(`${file} is larger than ${LARGEST / 1000} kB`);
    }
  } finally {
    await browser.close();
  }
} finally {
  await stack.stop();
  await rm(directory, { recursive: true, force: true });
}
process.exit();
