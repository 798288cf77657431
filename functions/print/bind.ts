import { degrees, type PDFDocument, PDFName, PDFOperator, PDFOperatorNames, type PDFPage, rgb } from "@cantoo/pdf-lib";

const MM = 72 / 25.4;

/** Millimetres from the lower left corner of a page. */
export interface Area {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

export interface Bound {
  /** In the order of the pages that were left for them: the last ones of the document. */
  readonly papers: readonly PDFDocument[];
  readonly area: Area;
}

const artifact = (page: PDFPage, draw: () => void): void => {
  page.pushOperators(PDFOperator.of(PDFOperatorNames.BeginMarkedContent, [PDFName.of("Artifact")]));
  draw();
  page.pushOperators(PDFOperator.of(PDFOperatorNames.EndMarkedContent));
};

/** How a page is shown: as its own turn says (ISO 32000-2, 7.7.3.3), clockwise. */
function shownAs(page: PDFPage): { readonly turn: 0 | 90 | 180 | 270; readonly width: number; readonly height: number } {
  const { width, height } = page.getCropBox();
  const turn = ((((Math.round(page.getRotation().angle / 90) * 90) % 360) + 360) % 360) as 0 | 90 | 180 | 270;
  return turn % 180 === 0 ? { turn, width, height } : { turn, width: height, height: width };
}

/**
 * Draws the papers' pages, each reduced to fit, as artifacts: pictures of a page. Only what a page draws comes along; scripts,
 * actions, forms, links and files of a paper stay behind.
 */
export async function bind(document: PDFDocument, { papers, area }: Bound): Promise<void> {
  const pages = papers.flatMap((paper) => paper.getPages());
  const first = document.getPageCount() - pages.length;
  const box = { x: area.x * MM, y: area.y * MM, width: area.width * MM, height: area.height * MM };
  for (const [at, source] of pages.entries()) {
    const target = document.getPage(first + at);
    const { turn, width, height } = shownAs(source);
    const scale = Math.min(1, box.width / width, box.height / height);
    const [w, h] = [width * scale, height * scale];
    const [x, y] = [box.x + (box.width - w) / 2, box.y + box.height - h];
    const crop = source.getCropBox();
    const drawn = await document
      .embedPage(source, { left: crop.x, bottom: crop.y, right: crop.x + crop.width, top: crop.y + crop.height })
      // a page that draws nothing
      .catch(() => undefined);
    artifact(target, () => {
      target.drawRectangle({ x, y, width: w, height: h, color: rgb(1, 1, 1), borderColor: rgb(0.72, 0.69, 0.63), borderWidth: 0.5 });
      if (drawn === undefined) return;
      const corner = { 0: [x, y], 90: [x, y + h], 180: [x + w, y + h], 270: [x + w, y] }[turn] as [number, number];
      target.drawPage(drawn, { x: corner[0], y: corner[1], xScale: scale, yScale: scale, rotate: degrees(-turn) });
    });
  }
}
