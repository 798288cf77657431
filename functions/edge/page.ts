import { parseAccept } from "hono/utils/accept";
import { refuse } from "#core/outcome/index.ts";
import { type Language, type PageCode, pagesEn, pagesEs } from "#core/record/index.ts";
import { sayIn } from "./say.ts";

const isOurs = (tag: string): tag is Language => tag === "en" || tag === "es";

/** The language of someone of whom nothing else is known, by what the browser asks for (RFC 9110, 12.5.4): 'es-MX' is Spanish. English otherwise. */
export function languageOf(request: Request): Language {
  const wanted = parseAccept(request.headers.get("accept-language") ?? "").filter(({ q }) => q > 0);
  const best = [...wanted].sort((a, b) => b.q - a.q).map(({ type }) => type.toLowerCase().split("-")[0] ?? "");
  return best.find(isOurs) ?? "en";
}

/** A page of the edge's own, for who has no app yet. Its texts are fixed words of this program, never a sender's. */
export function page(request: Request, code: PageCode): Response {
  const language = languageOf(request);
  const title = (language === "es" ? pagesEs : pagesEn)[code];
  const text = sayIn(language, "inch")(refuse(code, "page", {}).refusal);
  const html = `<!doctype html><html lang="${language}"><meta charset="utf-8"><meta name="viewport" content="width=device-width"><title>${title}</title><h1>${title}</h1><p>${text}</p></html>`;
  const headers = { "content-type": "text/html; charset=utf-8", "cache-control": "no-store", vary: "accept-language" };
  return new Response(html, { status: 404, headers });
}
