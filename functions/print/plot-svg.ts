import * as plotting from "@observablehq/plot";
import { parseHTML } from "linkedom";
import { type PictureView, type Plotting, plotted } from "#core/quality/index.ts";

/** CSS pixels: as wide as the paper's text at the size in which its letters are those of a table. */
const WIDTH = 640;

/** A picture as SVG by Observable Plot, on a document that no browser has. */
export function plotSvg(view: PictureView, language: "en" | "es"): string {
  const { document } = parseHTML("<!doctype html><html><body></body></html>");
  const svg = plotted(plotting as unknown as Plotting<SvgElement>, view, { width: WIDTH, language }, document);
  svg.querySelector("style")?.remove();
  svg.setAttribute("role", "img");
  svg.setAttribute("aria-label", view.title);
  return svg.outerHTML;
}

interface SvgElement {
  readonly outerHTML: string;
  setAttribute(name: string, value: string): void;
  querySelector(selector: string): { remove(): void } | null;
}
