import type { ElementHandle, Page } from "puppeteer";
import { textOf } from "./screen.ts";

/** What a tap belongs to: to taking a reading or a picture, or it stands for itself. */
export type TapOf = "reading" | "picture" | "itself";

export interface Taps {
  readonly reading: number;
  readonly picture: number;
  readonly itself: number;
  /** Characters typed on the phone's own keyboard. */
  readonly typed: number;
}

/** A thumb on the phone's screen: touches what is shown, and only where nothing lies over it. Every touch is counted. */
export class Hand {
  readonly page: Page;
  #reading = 0;
  #picture = 0;
  #itself = 0;
  #typed = 0;

  constructor(page: Page) {
    this.page = page;
  }

  get taps(): Taps {
    return { reading: this.#reading, picture: this.#picture, itself: this.#itself, typed: this.#typed };
  }

  count(of: TapOf): void {
    if (of === "reading") this.#reading += 1;
    else if (of === "picture") this.#picture += 1;
    else this.#itself += 1;
  }

  /** Where the app is, asked of the page itself: what the browser tells of an address comes later on a busy machine. */
  async here(): Promise<string> {
    return decodeURI(await this.page.evaluate(() => location.pathname));
  }

  /** The place to touch on an element, `across` and `down` from its top left, 0 to 1. @throws when something lies over it. */
  async #spot(element: ElementHandle<Element>, across: number, down: number): Promise<{ readonly x: number; readonly y: number }> {
    const spot = await element.evaluate(
      async (one, right, low) => {
        // a thumb comes down on what stands still: something that arrives meanwhile moves what is under it
        const place = (): string => JSON.stringify(one.getBoundingClientRect());
        for (let before = ""; before !== place(); ) {
          before = place();
          await new Promise((drawn) => requestAnimationFrame(() => requestAnimationFrame(drawn)));
        }
        const seen = (): { x: number; y: number } => {
          const { left, top, width, height } = one.getBoundingClientRect();
          return { x: left + width * right, y: top + height * low };
        };
        const isFree = ({ x, y }: { x: number; y: number }): boolean => {
          const at = document.elementFromPoint(x, y);
          return at !== null && (one.contains(at) || at.contains(one));
        };
        // nobody scrolls to what stands under the thumb already
        if (!isFree(seen())) one.scrollIntoView({ block: "center", behavior: "instant" });
        return isFree(seen()) ? seen() : undefined;
      },
      across,
      down,
    );
    if (spot === undefined) throw new Error(`something lies over: ${await element.evaluate((one) => one.outerHTML.slice(0, 160))}`);
    return spot;
  }

  async touch(element: ElementHandle<Element>, of: TapOf, across = 0.5, down = 0.5): Promise<void> {
    const { x, y } = await this.#spot(element, across, down);
    this.count(of);
    await this.page.touchscreen.tap(x, y);
  }

  async hold(element: ElementHandle<Element>, milliseconds: number): Promise<void> {
    const { x, y } = await this.#spot(element, 0.5, 0.5);
    this.#itself += 1;
    const finger = await this.page.touchscreen.touchStart(x, y);
    await new Promise((resolve) => setTimeout(resolve, milliseconds));
    await finger.end();
  }

  /** Types over what stands in a field. */
  async type(element: ElementHandle<Element>, text: string, of: TapOf): Promise<void> {
    await this.touch(element, of);
    await element.evaluate((one) => (one as HTMLInputElement).select());
    this.#typed += text.length;
    await this.page.keyboard.type(text);
  }

  /** The first shown element that a selector finds and that says these words; undefined when there is none now. */
  async shown(selector: string, words?: string): Promise<ElementHandle<Element> | undefined> {
    const found = await this.page.evaluateHandle(
      (which, text) =>
        [...document.querySelectorAll(which)].find(
          (one) =>
            one.checkVisibility() &&
            (text === undefined || (one.textContent ?? "").trim() === text || one.getAttribute("aria-label") === text),
        ) ?? null,
      selector,
      words,
    );
    return (found.asElement() as ElementHandle<Element> | null) ?? undefined;
  }

  /** The same, waited for. @throws when it does not come, with what the page says. */
  async find(selector: string, words?: string): Promise<ElementHandle<Element>> {
    for (const began = Date.now(); Date.now() - began < 15_000; ) {
      const found = await this.shown(selector, words);
      if (found !== undefined) return found;
      await new Promise((resolve) => setTimeout(resolve, 30));
    }
    const says = await textOf(this.page);
    throw new Error(`${await this.here()}: no ${selector} that says ${words ?? "anything"}\n${says.slice(0, 1200)}`);
  }

  async press(selector: string, words: string | undefined, of: TapOf): Promise<void> {
    await this.touch(await this.find(selector, words), of);
  }

  /** A link to a place of the app, as it is shown now. */
  async link(path: string): Promise<ElementHandle<Element> | undefined> {
    const found = await this.page.evaluateHandle(
      (to) =>
        [...document.querySelectorAll("a[href]")].find(
          (one) => one.checkVisibility() && decodeURI(one.getAttribute("href") ?? "") === to,
        ) ?? null,
      decodeURI(path),
    );
    return (found.asElement() as ElementHandle<Element> | null) ?? undefined;
  }

  async arrived(path: string): Promise<void> {
    await this.page.waitForFunction(
      (to) => decodeURI(location.pathname) === to && document.querySelector("main") !== null,
      { timeout: 15_000 },
      decodeURI(path),
    );
  }

  async left(path: string, timeout = 15_000): Promise<void> {
    await this.page.waitForFunction(
      (from) => decodeURI(location.pathname) !== from && document.querySelector("main") !== null,
      { timeout },
      path,
    );
    // the page has been drawn: what is shown is of this place
    await this.page.evaluate(() => new Promise((drawn) => requestAnimationFrame(() => setTimeout(drawn))));
  }

  /** Taps from page to page until the app is there: by a link to it where one is shown, by one that leads nearer, or back. */
  async go(path: string, ...nearer: readonly string[]): Promise<void> {
    const to = decodeURI(path);
    for (let tapped = 0, from = await this.here(); from !== to; tapped += 1, from = await this.here()) {
      if (tapped > 8) throw new Error(`${to} was not reached; the way ended at ${from}`);
      let next = await this.link(to);
      for (const one of nearer) if (next === undefined && decodeURI(one) !== from) next = await this.link(one);
      await this.touch(next ?? (await this.find(".back")), "itself");
      // a touch that met nothing is made again, and counts again
      await this.left(from, 5_000).catch((error: Error) => {
        if (tapped > 6) throw error;
      });
    }
  }
}
