import type { Page } from "puppeteer";

/** Lets a page's clock go ahead of the machine's by what `clock-ahead` says in its own storage, in milliseconds; nothing there: not at all. */
export async function clockThatCanBeSet(page: Page): Promise<void> {
  await page.evaluateOnNewDocument(() => {
    const Own = Date;
    const ahead = (): number => {
      try {
        return Number(localStorage.getItem("clock-ahead") ?? 0);
      } catch {
        // a page without an address has no storage
        return 0;
      }
    };
    globalThis.Date = new Proxy(Own, {
      construct: (target, given, as) => Reflect.construct(target, given.length === 0 ? [Own.now() + ahead()] : given, as) as object,
      get: (target, name) => (name === "now" ? () => Own.now() + ahead() : Reflect.get(target, name)),
    });
  });
}

/** Sets the page's clock to an instant; undefined: back to the machine's. */
export async function setClock(page: Page, instant: number | undefined): Promise<void> {
  await page.evaluate(
    (ahead) => (ahead === undefined ? localStorage.removeItem("clock-ahead") : localStorage.setItem("clock-ahead", String(ahead))),
    instant === undefined ? undefined : instant - Date.now(),
  );
}
