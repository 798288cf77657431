import type { Page } from "puppeteer";

/** What a walk over the screens does with a page: opens a place, presses what says so, fills what is asked. */
export class WalkPage {
  readonly page: Page;
  readonly #edge: string;

  constructor(page: Page, edge: string) {
    this.page = page;
    this.#edge = edge;
  }

  async open(path: string, wanted = "main"): Promise<void> {
    await this.page.goto(new URL(path, this.#edge).href);
    await this.wait(wanted);
  }

  async wait(selector: string): Promise<void> {
    await this.page.waitForSelector(selector, { visible: true });
  }

  /** Until a script's expression holds. */
  async until(expression: string): Promise<void> {
    await this.page.waitForFunction(expression);
  }

  /** Presses the first shown element of a selector. */
  async press(selector: string): Promise<void> {
    await this.page.locator(selector).click();
  }

  async type(selector: string, text: string): Promise<void> {
    await this.press(selector);
    await this.page.keyboard.type(text);
  }

  async choose(selector: string, ...paths: readonly string[]): Promise<void> {
    await this.page.waitForSelector(selector);
    const input = await this.page.$(selector);
    await (input as { uploadFile(...files: string[]): Promise<void> } | null)?.uploadFile(...paths);
  }
}
