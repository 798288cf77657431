import { mkdtemp, rm, writeFile } from "node:fs/promises";
import { createServer, type Server } from "node:http";
import type { AddressInfo } from "node:net";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { ok } from "#core/outcome/index.ts";
import type { WarmBrowser } from "#functions/print/browser.ts";
import { draw, drawAgain } from "#functions/print/draw.ts";
import { photoAddress } from "#functions/print/origin.ts";
import { renumberStructureIds } from "#functions/print/structure-ids.ts";
import { browserEnvironment } from "#infra/browser/index.ts";
import { readWords } from "../helpers/pdf.ts";
import { warmBrowser } from "../helpers/printer.ts";

const alive = (pid: number): boolean => {
  try {
    process.kill(pid, 0);
    return true;
  } catch {
    return false;
  }
};
const ended = async (pid: number): Promise<boolean> => {
  for (let round = 0; round < 100 && alive(pid); round += 1) await new Promise((later) => setTimeout(later, 50));
  return !alive(pid);
};
const page = (body: string): string =>
  `<!doctype html><html lang="en"><head><meta charset="utf-8"><title>t</title></head><body>${body}</body></html>`;

describe("draw", () => {
  let browser: WarmBrowser;
  let server: Server;
  let outside: string;
  const asked: string[] = [];
  beforeAll(async () => {
    browser = await warmBrowser();
    server = createServer((request, response) => {
      asked.push(request.url ?? "");
      response.end("reached");
    });
    await new Promise<void>((listening) => server.listen(0, "127.0.0.1", listening));
    outside = `http://127.0.0.1:${(server.address() as AddressInfo).port}`;
  });
  afterAll(async () => {
    await browser.close();
    server.close();
  });
  const drawn = (html: string) => browser.withPage((one) => draw(one, html, new Map()));

  it("reaches no network and no file from a page that was not escaped, and runs no script of it", async () => {
    const outcome = await drawn(
      page(`<style>@import url("${outside}/import"); p { background: url("${outside}/background") }</style><link rel="stylesheet" href="${outside}/sheet">
<p>before</p><iframe src="file:///etc/passwd"></iframe><iframe src="${outside}/frame"></iframe><object data="file:///etc/passwd"></object><embed src="${outside}/embed">
<script>document.body.append("taken over"); fetch("${outside}/fetch")</script><script src="${outside}/script"></script><form action="${outside}/form"></form>
<video hidden src="${outside}/video" autoplay></video><svg><image href="${outside}/svg"/></svg><p>after</p>`),
    );
    if (!outcome.ok) throw new Error(JSON.stringify(outcome.refusal));
    const { text } = await readWords(outcome.value.pdf);
    expect(text).toBe("before after");
    expect(asked).toEqual([]);
  });

  it("fails at once where a file that is on its way will never come", async () => {
    const html = page(`<img src="${photoAddress("0".repeat(64))}" alt="">`);
    const never = new Promise<never>((_, reject) => setTimeout(reject, 200, new Error("the store is broken")));
    // a slow page asks for it later than that
    never.catch(() => undefined);
    const began = performance.now();
    const outcome = await browser.withPage((one) =>
      draw(one, html, new Map(), never).then(async (drawn) => {
        await never;
        return drawn;
      }),
    );
    expect(outcome).toMatchObject({
      ok: false,
      refusal: { code: "print-failed", figures: { why: "browser", says: "the store is broken" } },
    });
    expect(performance.now() - began).toBeLessThan(10_000);
  });

  it("names every image that is not there, from outside or from a file", async () => {
    const addresses = [`${outside}/photo.jpg`, "file:///etc/hostname", photoAddress("0".repeat(64))];
    const outcome = await drawn(page(addresses.map((address) => `<img src="${address}" alt="">`).join("")));
    expect(outcome).toMatchObject({ ok: true, value: { undecoded: addresses } });
    expect(asked).toEqual([]);
  });

  it("prints a page with another body as if it were drawn anew, pictures and all", async () => {
    const grey = (level: number) => ({
      type: "image/svg+xml",
      bytes: new TextEncoder().encode(
        `<svg xmlns="http://www.w3.org/2000/svg" width="40" height="30"><rect width="40" height="30" fill="rgb(${level} 0 0)"/></svg>`,
      ),
    });
    const address = (name: string): string => photoAddress(name.repeat(64));
    const body = (name: string, numbers: readonly number[]): string =>
      page(
        `<h1>Contents</h1><ol>${numbers.map((one) => `<li><a href="#part${one}">part ${one}</a></li>`).join("")}</ol><img src="${address(name)}" alt="a picture">
${numbers.map((one) => `<h2 id="part${one}" style="break-before: page">Part ${one}</h2><p>of the trench</p>`).join("")}`,
      );
    const [before, after] = [body("a", [1, 2]), body("b", [3, 4, 5])];
    const files = new Map([
      [address("a"), grey(20)],
      [address("b"), grey(200)],
    ]);
    const anew = await browser.withPage((one) => draw(one, after, files));
    const again = await browser.withPage(async (one) => {
      const first = await draw(one, before, files);
      return first.ok ? drawAgain(one, after, files) : first;
    });
    if (!anew.ok || !again.ok) throw new Error(JSON.stringify([anew, again]));
    const still = (pdf: Uint8Array): string =>
      Buffer.from(renumberStructureIds(pdf))
        .toString("latin1")
        .replace(/\(D:\d{14}[^)]*\)/g, "");
    expect(still(again.value.pdf)).toBe(still(anew.value.pdf));
    expect({ ...again.value, pdf: undefined }).toEqual({ ...anew.value, pdf: undefined });
    const missing = await browser.withPage(async (one) => {
      const first = await draw(one, before, files);
      return first.ok ? drawAgain(one, body("c", [3]), files) : first;
    });
    expect(missing).toMatchObject({ ok: true, value: { undecoded: [address("c")] } });
    expect(asked).toEqual([]);
  });

  it("runs nothing and reaches nothing from another body either", async () => {
    const outcome = await browser.withPage(async (one) => {
      const first = await draw(one, page("<p>before</p>"), new Map());
      const hostile = `<p>after</p><iframe src="${outside}/frame"></iframe>
<script>document.body.append("taken over"); fetch("${outside}/fetch")</script><style>@import url("${outside}/import");</style>`;
      return first.ok ? drawAgain(one, page(hostile), new Map()) : first;
    });
    if (!outcome.ok) throw new Error(JSON.stringify(outcome.refusal));
    expect((await readWords(outcome.value.pdf)).text).toBe("after");
    expect(asked).toEqual([]);
  });

  it("does not print a page that has left its place", async () => {
    const outcome = await drawn(page(`<meta http-equiv="refresh" content="0;url=${outside}/elsewhere"><p>here</p>`));
    if (outcome.ok) expect((await readWords(outcome.value.pdf)).text).toBe("here");
    else expect(outcome.refusal.code).toBe("print-failed");
    expect(asked).toEqual([]);
  });
});

describe("WarmBrowser", () => {
  it("is one browser for page after page", async () => {
    const browser = await warmBrowser();
    try {
      const pids = [];
      for (let round = 0; round < 3; round += 1) {
        expect(await browser.withPage(async (one) => ok(await one.evaluate("1 + 1")))).toEqual({ ok: true, value: 2 });
        pids.push(await browser.pid());
      }
      expect(new Set(pids).size).toBe(1);
    } finally {
      await browser.close();
    }
  });

  it("is started again after it died, while it was idle or at work", async () => {
    const browser = await warmBrowser();
    try {
      await browser.warm();
      const first = (await browser.pid()) as number;
      process.kill(-first, "SIGKILL");
      expect(await ended(first)).toBe(true);
      expect(await browser.withPage(async () => ok("drawn"))).toEqual({ ok: true, value: "drawn" });
      const second = (await browser.pid()) as number;
      const dying = await browser.withPage(async (one) => {
        process.kill(-second, "SIGKILL");
        return ok(await one.evaluate("1"));
      });
      expect(dying).toMatchObject({ ok: false, refusal: { code: "print-failed", figures: { why: "browser-ended" } } });
      expect(await browser.withPage(async () => ok("again"))).toEqual({ ok: true, value: "again" });
    } finally {
      await browser.close();
    }
  });

  it("ends with a page that takes too long, and the next page gets a new one", async () => {
    const browser = await warmBrowser({ pageLimit: 3_000 });
    try {
      await browser.warm();
      const first = (await browser.pid()) as number;
      const late = await browser.withPage((one) => one.evaluate("new Promise(() => {})").then(() => ok(null)));
      expect(late).toMatchObject({ ok: false, refusal: { code: "print-failed", figures: { why: "time-limit", milliseconds: 3_000 } } });
      expect(await ended(first)).toBe(true);
      // the start is no part of the limit of a page
      await browser.warm();
      expect(await browser.withPage(async () => ok("next"))).toEqual({ ok: true, value: "next" });
      expect(await browser.pid()).not.toBe(first);
    } finally {
      await browser.close();
    }
  });

  it("does not count what a page waits for", async () => {
    const browser = await warmBrowser({ pageLimit: 500 });
    try {
      await browser.warm();
      const wait = (milliseconds: number) => new Promise((later) => setTimeout(later, milliseconds));
      const coming = wait(1_200);
      expect(await browser.withPage(() => coming.then(() => ok("drawn")), coming)).toEqual({ ok: true, value: "drawn" });
      const late = await browser.withPage(() => wait(5_000).then(() => ok("drawn")), wait(700));
      expect(late).toMatchObject({ ok: false, refusal: { code: "print-failed", figures: { why: "time-limit" } } });
    } finally {
      await browser.close();
    }
  });

  it("hands over the page that was opened before, once, and another where it does not answer any more", async () => {
    const browser = await warmBrowser();
    try {
      const contexts = async () => (await browser.warm()).browserContexts().length;
      const first = await contexts();
      const prepared = async () => {
        browser.prepare();
        browser.prepare();
        for (let round = 0; round < 100 && (await contexts()) === first; round += 1) await new Promise((later) => setTimeout(later, 20));
        expect(await contexts()).toBe(first + 1);
      };
      await prepared();
      const inside = await browser.withPage(async (one) => {
        await one.browserContext().setCookie({ name: "left", value: "behind", domain: "record.invalid" });
        return ok(await contexts());
      });
      expect(inside).toEqual({ ok: true, value: first + 1 });
      expect(await contexts()).toBe(first);
      expect(await browser.withPage(async (one) => ok(await one.browserContext().cookies()))).toEqual({ ok: true, value: [] });

      await prepared();
      const both = await Promise.all([1, 2].map(() => browser.withPage(async (one) => ok(one))));
      expect(both[0]).not.toEqual(both[1]);
      expect(await contexts()).toBe(first);

      await prepared();
      const [gone] = (await browser.warm()).browserContexts().slice(-1);
      await (await gone?.pages())?.[0]?.close();
      expect(await browser.withPage(async (one) => ok(await one.evaluate("1 + 1")))).toEqual({ ok: true, value: 2 });
      expect(await contexts()).toBe(first);

      await prepared();
      const pid = (await browser.pid()) as number;
      process.kill(-pid, "SIGKILL");
      expect(await ended(pid)).toBe(true);
      expect(await browser.withPage(async (one) => ok(await one.evaluate("1 + 1")))).toEqual({ ok: true, value: 2 });
    } finally {
      await browser.close();
    }
  });

  it("does not remember a start that failed", async () => {
    const { BROWSER_PATH } = await browserEnvironment();
    const folder = await mkdtemp(join(tmpdir(), "asburied-browser-"));
    const start = join(folder, "start.sh");
    await writeFile(start, `#!/bin/sh\ntest -e "${folder}/there" || exit 3\nexec "${BROWSER_PATH}" "$@"\n`, { mode: 0o755 });
    const browser = await warmBrowser({ path: start });
    try {
      expect(await browser.ready()).toMatchObject({ ok: false, refusal: { figures: { why: "browser-does-not-start" } } });
      expect(await browser.withPage(async () => ok("drawn"))).toMatchObject({ ok: false, refusal: { code: "print-failed" } });
      await writeFile(join(folder, "there"), "");
      expect(await browser.withPage(async () => ok("drawn"))).toEqual({ ok: true, value: "drawn" });
    } finally {
      await browser.close();
      await rm(folder, { recursive: true, force: true });
    }
  });

  it("leaves no process behind when it is closed", async () => {
    const browser = await warmBrowser();
    await browser.warm();
    const pid = (await browser.pid()) as number;
    await browser.close();
    expect(await ended(pid)).toBe(true);
  });
});
