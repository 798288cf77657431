import type { PageCode } from "./pages-en.ts";

/** What the edge says on a page of its own, in Spanish. */
export const pagesEs: Readonly<Record<PageCode, string>> = {
  "link-unknown": "Este enlace no sirve",
  "release-ended": "Este enlace terminó",
  "route-unknown": "Aquí no hay nada",
};
