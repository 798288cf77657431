import { setTimeout } from "node:timers/promises";
import puppeteer, { type Browser, type Page } from "puppeteer";
import { type Outcome, ok, refuse } from "#core/outcome/index.ts";

export interface BrowserSettings {
  readonly path: string;
  /** The whole environment of the browser; nothing of print's own secrets. */
  readonly environment: Readonly<Record<string, string>>;
  /** How long one page may take, in milliseconds, from when it is open and what it waits for has come. */
  readonly pageLimit: number;
  /** How long closing may take before the browser is killed, in milliseconds. */
  readonly closeLimit: number;
  readonly report: (line: string) => void;
}

const switches = [
  "--no-sandbox",
  "--disable-dev-shm-usage",
  "--font-render-hinting=none",
  "--hide-scrollbars",
  "--disable-background-networking",
  "--disable-gpu",
  "--no-first-run",
  "--no-pings",
  "--host-resolver-rules=MAP * ~NOTFOUND",
];

/** Own: a blank page answers within a few. */
const ANSWER_MS = 1_000;

/** In a context of its own. */
const blank = async (browser: Browser): Promise<Page> => (await browser.createBrowserContext()).newPage();

/** One warm browser. It is started again when it has died; a start that failed is not remembered. */
export class WarmBrowser {
  readonly #settings: BrowserSettings;
  #started: Promise<Browser> | undefined;
  #spare: Promise<Page> | undefined;

  constructor(settings: BrowserSettings) {
    this.#settings = settings;
  }

  /** Process id of the browser, where it runs. */
  async pid(): Promise<number | undefined> {
    return (await this.#started?.catch(() => undefined))?.process()?.pid;
  }

  async warm(): Promise<Browser> {
    const running = await this.#started?.catch(() => undefined);
    if (running?.connected) return running;
    const starting = this.#launch();
    this.#started = starting;
    starting.catch(() => {
      if (this.#started === starting) this.#started = undefined;
    });
    return starting;
  }

  /** Starts it where it does not run. Refused as `print-failed` when it does not start. */
  async ready(): Promise<Outcome<null>> {
    try {
      await this.warm();
      return ok(null);
    } catch (thrown) {
      this.#settings.report(`the browser does not start: ${(thrown as Error).message}`);
      return refuse("print-failed", "print/browser", { why: "browser-does-not-start" });
    }
  }

  /** Opens a page for whoever asks next. One that does not open is not missed: there is another then. */
  prepare(): void {
    this.#spare ??= this.warm().then(blank);
    this.#spare.catch(() => undefined);
  }

  /**
   * Opens a page in a context of its own, hands it to `work` and closes it, whatever happened. Refused as `print-failed`
   * when the browser does not start, dies, or takes longer than the limit; what it waits for in `until` is not counted.
   */
  async withPage<T>(work: (page: Page) => Promise<Outcome<T>>, until: Promise<unknown> = Promise.resolve()): Promise<Outcome<T>> {
    let browser: Browser | undefined;
    let over = false;
    const whole = (async (): Promise<Outcome<T>> => {
      browser = await this.warm();
      const page = await this.#page(browser);
      try {
        return await work(page);
      } finally {
        await this.#closed(browser, page.browserContext().close());
      }
    })().catch((thrown: Error): Outcome<T> => {
      if (!over) this.#settings.report(thrown.stack ?? thrown.message);
      return refuse("print-failed", "print", {
        why: browser?.connected === false ? "browser-ended" : "browser",
        says: thrown.message.slice(0, 200),
      });
    });
    const outcome = await within(whole, this.#settings.pageLimit, until);
    if (outcome !== undefined) return outcome;
    over = true;
    // A page that hangs may hang its browser, and closing waits for it: the next page gets a new one.
    if (browser) await this.#kill(browser);
    else this.#started = undefined;
    return refuse("print-failed", "print", { why: "time-limit", milliseconds: this.#settings.pageLimit });
  }

  /** The page that was opened before, where it still answers; else another. */
  async #page(browser: Browser): Promise<Page> {
    const taken = this.#spare;
    // nobody else gets it while this one waits
    this.#spare = undefined;
    const spare = await taken?.catch(() => undefined);
    if (spare?.browser() !== browser) return blank(browser);
    const answers = await within(
      spare.evaluate("true").catch(() => undefined),
      ANSWER_MS,
    );
    if (answers === true) return spare;
    void spare
      .browserContext()
      .close()
      .catch(() => undefined);
    return blank(browser);
  }

  async close(): Promise<void> {
    const browser = await this.#started?.catch(() => undefined);
    this.#started = undefined;
    if (browser) await this.#closed(browser, browser.close());
  }

  #launch(): Promise<Browser> {
    const { path, environment } = this.#settings;
    return puppeteer.launch({
      executablePath: path,
      env: { ...environment },
      args: switches,
      headless: "shell",
      // Over a pipe the browser ends when print does, however print ended.
      pipe: true,
      handleSIGINT: false,
      handleSIGTERM: false,
      handleSIGHUP: false,
    });
  }

  async #closed(browser: Browser, closing: Promise<void>): Promise<void> {
    const done = await within(
      closing.then(
        () => true,
        () => browser.connected,
      ),
      this.#settings.closeLimit,
    );
    if (done === undefined) await this.#kill(browser);
  }

  async #kill(browser: Browser): Promise<void> {
    const child = browser.process();
    this.#started = undefined;
    if (!child?.pid || child.exitCode !== null || child.signalCode !== null) return;
    const ended = new Promise((gone) => child.once("exit", gone));
    try {
      // Its children are in its group: without the minus the pages' own processes would stay.
      process.kill(-child.pid, "SIGKILL");
    } catch {
      child.kill("SIGKILL");
    }
    await within(ended, this.#settings.closeLimit);
  }
}

/** The value, or undefined when it takes longer, from `until` on. */
async function within<T>(promise: Promise<T>, milliseconds: number, until?: Promise<unknown>): Promise<T | undefined> {
  const ended = new AbortController();
  const limit = async (): Promise<undefined> => {
    await until?.catch(() => undefined);
    await setTimeout(milliseconds, undefined, { signal: ended.signal });
  };
  try {
    return await Promise.race([promise, limit()]);
  } finally {
    ended.abort();
  }
}
