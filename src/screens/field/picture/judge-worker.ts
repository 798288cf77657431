import { GREY_LONG_EDGE, greyFromRgba, judgePhoto, measureGrey } from "../../../photo/index.ts";
import type { PhotoAsked } from "../beside.ts";
import type { Looked } from "./what.ts";

declare const self: { onmessage: (event: { readonly data: PhotoAsked }) => void; postMessage(looked: Looked): void };

/** Long edge of the picture that the phone's own pages show. */
const SMALL_LONG_EDGE = 640;

/** Drawn at most so large, never larger than it is: a canvas of the whole picture comes out blank on some phones. */
function drawn(
  picture: ImageBitmap | OffscreenCanvas,
  longEdge: number,
): { canvas: OffscreenCanvas; context: OffscreenCanvasRenderingContext2D } {
  const share = Math.min(1, longEdge / Math.max(picture.width, picture.height));
  const canvas = new OffscreenCanvas(Math.max(1, Math.round(picture.width * share)), Math.max(1, Math.round(picture.height * share)));
  const context = canvas.getContext("2d", { willReadFrequently: true });
  if (context === null) throw new Error("no canvas here");
  context.imageSmoothingQuality = "high";
  context.drawImage(picture, 0, 0, canvas.width, canvas.height);
  return { canvas, context };
}

async function look({ number, photo }: PhotoAsked): Promise<Looked> {
  const picture = await createImageBitmap(photo);
  const { width, height } = picture;
  const { canvas, context } = drawn(picture, GREY_LONG_EDGE);
  picture.close();
  const { pixels, ...size } = greyFromRgba(context.getImageData(0, 0, canvas.width, canvas.height).data, canvas.width, canvas.height);
  const judged = judgePhoto({ width, height, ...measureGrey(pixels, size.width, size.height) });
  const small = await drawn(canvas, SMALL_LONG_EDGE).canvas.convertToBlob({ type: "image/jpeg", quality: 0.8 });
  return { number, judged, small: await small.arrayBuffer() };
}

// whatever cannot be opened here may well be opened at the office
self.onmessage = ({ data }) => {
  void look(data)
    .catch((): Looked => ({ number: data.number, judged: { verdict: "not judged" } }))
    .then((looked) => self.postMessage(looked));
};
