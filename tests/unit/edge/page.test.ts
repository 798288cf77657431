import { describe, expect, it } from "vitest";

// By a variable name: the edge is written for another platform's types than the tests.
const pageFile = "#functions/edge/page.ts";
const { languageOf, page } = (await import(pageFile)) as {
  languageOf: (request: Request) => "en" | "es";
  page: (request: Request, code: string) => Response;
};

const asking = (accepts?: string): Request =>
  new Request("http://edge/x", accepts === undefined ? {} : { headers: { "accept-language": accepts } });

describe("the language of a stranger", () => {
  it.each([
    [undefined, "en"],
    ["", "en"],
    ["es", "es"],
    ["es-MX,es;q=0.9,en;q=0.8", "es"],
    ["en-US,en;q=0.9,es;q=0.8", "en"],
    ["en;q=0.3, es-419;q=0.7", "es"],
    ["de-DE,de;q=0.9,es;q=0.5,en;q=0.4", "es"],
    ["fr", "en"],
    ["es;q=0", "en"],
    ["ES", "es"],
    ["*", "en"],
    ["estonian, est;q=0.9", "en"],
    ["\u00ff;;q=,,q=1;=", "en"],
  ])("asking for %j reads %s", (accepts, language) => {
    expect(languageOf(asking(accepts))).toBe(language);
  });
});

describe("the edge's own pages", () => {
  it.each([
    ["link-unknown", "en", "This link does not work", "Ask the office for a new one."],
    ["link-unknown", "es", "Este enlace no sirve", "Pida uno nuevo a la oficina."],
    ["release-ended", "en", "This link has ended", "Ask the company that built it for a new one."],
    ["release-ended", "es", "Este enlace terminó", "Pida uno nuevo a la empresa que lo construyó."],
    ["route-unknown", "en", "Nothing is here", "start from the program"],
    ["route-unknown", "es", "Aquí no hay nada", "empiece desde la primera página"],
  ])("%s in %s", async (code, language, title, words) => {
    const response = page(asking(language), code);
    expect([response.status, response.headers.get("cache-control"), response.headers.get("vary")]).toEqual([
      404,
      "no-store",
      "accept-language",
    ]);
    const html = await response.text();
    expect(html).toContain(`<html lang="${language}">`);
    expect(html).toContain(`<h1>${title}</h1>`);
    expect(html).toContain(words);
  });
});
