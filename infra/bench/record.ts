import { createHash } from "node:crypto";
import { createServer } from "node:http";
import type { AddressInfo } from "node:net";
import { setTimeout } from "node:timers/promises";
import puppeteer, { type Browser } from "puppeteer";
import { jpegsIn } from "#core/proof/index.ts";
import { filesOf, type RecordModel } from "#core/record/index.ts";
import { launchOptions } from "../browser/index.ts";
import { defaultSheet } from "../sheets/index.ts";
import { type Benched, type Company, withStack } from "./edge-for-bench.ts";
import { entered, jobIn } from "./entering.ts";
import { cameraJpeg } from "./inputs.ts";
import { beside, type Line } from "./line.ts";
import { medians } from "./medians.ts";
import { peakOf } from "./resident.ts";

export interface RecordAsked {
  readonly photos: number;
  readonly rounds: number;
  readonly warm: number;
}

export const SIXTY: RecordAsked = { photos: 60, rounds: 7, warm: 8 };

/** A job with so many pictures, each read by media. */
async function jobWithPictures({ bare }: Benched, company: Company, count: number): Promise<string> {
  const job = await jobIn(company);
  const jpeg = await cameraJpeg(1600, 1200);
  const items = defaultSheet().items.filter((item) => item.kind === "picture" && item.tags === undefined && item.switches === undefined);
  const entries = [];
  for (let n = 0; n < count; n += 1) {
    const bytes = new Uint8Array(Buffer.concat([jpeg, Buffer.from(`picture ${n}`)]));
    const photo = createHash("sha256").update(bytes).digest("hex");
    await company.crew.putPhoto(photo, bytes);
    const item = items[n % items.length]?.id ?? "";
    entries.push(await entered(job, "picture-taken", { item, photo, bytes: bytes.length, type: "image/jpeg" }));
  }
  await company.crew.send("POST", `/api/jobs/${job.job}/entries`, { sent: Date.now(), entries });
  for (;;) {
    const [rows] = await bare([["SELECT count(*) AS unread FROM photo WHERE company = ?1 AND state = 'stored'", company.id]]);
    if (rows?.[0]?.unread === 0) return job.job;
    await setTimeout(100);
  }
}

interface Static {
  readonly html: string;
  readonly files: ReadonlyMap<string, { readonly type: string; readonly bytes: Uint8Array }>;
}

const SETTLE_MS = 800;
const ORIGIN = "https://record.invalid";
const at = (path: string): string => new URL(`../../${path}`, import.meta.url).href;

/** The page of an issued record as print lays it out, with the fonts and the very pictures that are in it. Loaded only now, by path: no other bench draws pages. */
async function staticPage(model: RecordModel, pdf: Uint8Array<ArrayBuffer>): Promise<Static> {
  const { readFonts } = (await import(at("functions/print/fonts.ts"))) as {
    readFonts: () => Promise<{ readonly css: string; readonly files: Static["files"] }>;
  };
  const { recordPage } = (await import(at("templates/record/index.ts"))) as {
    recordPage: (model: RecordModel, surroundings: object) => string;
  };
  const fonts = await readFonts();
  const addressOf = (photo: string): string => `${ORIGIN}/photos/${photo}.jpg`;
  const files = new Map(fonts.files);
  const photos = filesOf(model).map(({ photo }) => photo);
  const jpegs = jpegsIn(pdf);
  if (jpegs.length !== photos.length) throw new Error(`the record has ${jpegs.length} of ${photos.length} pictures`);
  // they are all of one size: which of them is where makes no difference
  for (const [at, photo] of photos.entries())
    files.set(addressOf(photo), { type: "image/jpeg", bytes: jpegs[at] as Uint8Array<ArrayBuffer> });
  const html = recordPage(model, {
    fonts: fonts.css,
    photo: ({ photo }: { readonly photo: string }) => ({ address: addressOf(photo) }),
    bound: () => ({ from: 100, pages: 0 }),
  });
  return { html, files };
}

/** The page and its files from a server of this machine, with nothing between it and the browser. */
async function served({ html, files }: Static): Promise<{ readonly address: string; end(): void }> {
  const server = createServer(({ url }, response) => {
    const file = files.get(`${ORIGIN}${url}`);
    if (url === "/record") response.setHeader("content-type", "text/html; charset=utf-8").end(page);
    else if (file !== undefined) response.setHeader("content-type", file.type).end(file.bytes);
    else response.writeHead(404).end();
  });
  await new Promise<void>((listening) => server.listen(0, "127.0.0.1", listening));
  const origin = `http://127.0.0.1:${(server.address() as AddressInfo).port}`;
  const page = html.replaceAll(ORIGIN, origin);
  return { address: `${origin}/record`, end: () => server.close() };
}

/** The browser alone: the page opened, its images and fonts loaded, printed. It decodes an image when it wants to: the PDF takes it as it is. */
async function printed(browser: Browser, address: string): Promise<Uint8Array> {
  const context = await browser.createBrowserContext();
  try {
    const page = await context.newPage();
    await page.goto(address, { waitUntil: "load" });
    await page.evaluate("document.fonts.ready.then(() => undefined)");
    return await page.pdf({ printBackground: true, preferCSSPageSize: true, tagged: true, outline: true });
  } finally {
    await context.close();
  }
}

/** A record issued, from the request to its sealed PDF in the store, beside the browser printing the same page and nothing else. */
export const record = ({ photos, rounds, warm }: RecordAsked): Promise<readonly Line[]> =>
  withStack(async (benched) => {
    const company = await benched.company();
    const job = await jobWithPictures(benched, company, photos);
    const issue = () => company.office.send<{ record: string; bytes: number }>("POST", `/api/jobs/${job}/records`, { edition: "customer" });
    const first = await issue();
    const model = await company.office.get<RecordModel>(`/api/records/${first.record}/model`);
    const page = await served(await staticPage(model, new Uint8Array(await company.office.bytes(`/api/records/${first.record}/pdf`))));
    const browser = await puppeteer.launch(await launchOptions());
    try {
      let [ours, bare] = [first.bytes, 0];
      const print = benched.stack.processes.find(({ name }) => name === "print")?.pid ?? 0;
      const memory = peakOf(print);
      const took = await medians(
        [
          {
            name: "issued",
            run: async () => {
              ours = (await issue()).bytes;
            },
            // print opens its next page when nobody waits
            settle: () => setTimeout(SETTLE_MS),
          },
          {
            name: "printed",
            run: async () => {
              bare = (await printed(browser, page.address)).length;
            },
          },
        ],
        rounds,
        warm,
      );
      const { before, peak } = await memory.end();
      return [
        beside(`record of ${photos} photos issued, beside the browser printing the same page`, took.issued, took.printed, 1.25),
        { what: "its file, beside the browser's alone", unit: "kB", ours: ours / 1000, beside: bare / 1000 },
        { what: "memory of print and its browser at most, beside before", unit: "MB", ours: peak, beside: before },
      ];
    } finally {
      await browser.close();
      page.end();
    }
  });
