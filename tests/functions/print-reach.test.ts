import { type AddressInfo, createServer, type Server } from "node:net";
import { afterAll, beforeAll, expect, it } from "vitest";
import type { WarmBrowser } from "#functions/print/browser.ts";
import { draw } from "#functions/print/draw.ts";
import { ORIGIN } from "#functions/print/origin.ts";
import { readWords } from "../helpers/pdf.ts";
import { warmBrowser } from "../helpers/printer.ts";

let browser: WarmBrowser;
let server: Server;
let outside: string;
let connections = 0;
beforeAll(async () => {
  browser = await warmBrowser();
  server = createServer((socket) => {
    connections += 1;
    socket.destroy();
  });
  await new Promise<void>((listening) => server.listen(0, "127.0.0.1", listening));
  outside = `http://127.0.0.1:${(server.address() as AddressInfo).port}`;
});
afterAll(async () => {
  await browser.close();
  server.close();
});

it("a page that was not escaped opens no connection at all, and of what it asks for nothing is answered but itself", async () => {
  const hints = ["preconnect", "dns-prefetch", "prefetch", "preload", "modulepreload", "prerender", "icon", "manifest", "stylesheet"];
  const places = [outside, "http://169.254.169.254/latest/meta-data/", "file:///etc/passwd", "ftp://127.0.0.1/x", "https://localhost/"];
  const links = hints.flatMap((rel) => places.map((place) => `<link rel="${rel}" as="image" href="${place}">`));
  const html = `<!doctype html><html lang="en"><head><meta charset="utf-8"><title>t</title>${links.join("")}</head><body><p ping="${outside}">before</p>
${places.map((place) => `<img src="${place}" hidden><picture><source srcset="${place} 2x"></picture><a href="${place}" ping="${outside}">there</a><input type="image" src="${place}"><track src="${place}"><audio src="${place}"></audio>`).join("")}
<svg><use href="${outside}/x.svg#a"/></svg><math><mtext>m</mtext></math><object data="${outside}"></object><portal src="${outside}"></portal></body></html>`;
  const answered: string[] = [];
  const outcome = await browser.withPage((page) => {
    page.on("requestfinished", (request) => answered.push(request.url()));
    return draw(page, html, new Map());
  });
  // images that did not come are told; the page is not printed with holes
  if (!outcome.ok) throw new Error(JSON.stringify(outcome.refusal));
  expect(outcome.value.undecoded.length).toBeGreaterThan(0);
  expect(answered.filter((address) => !address.startsWith(ORIGIN))).toEqual([]);
  const plain = await browser.withPage((page) => draw(page, html.replaceAll(/<img [^>]*>/g, ""), new Map()));
  if (!plain.ok) throw new Error(JSON.stringify(plain.refusal));
  expect((await readWords(plain.value.pdf)).text).toMatch(/^before there/);
  // a hint is followed late
  await new Promise((later) => setTimeout(later, 300));
  expect(connections).toBe(0);
}, 60_000);
