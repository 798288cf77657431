import { edgeAcross, type Grey, greyFromRgba } from "../../../photo/index.ts";
import { cropAbout, type End, reachOf } from "./view.ts";

/** Grey pixels of a part of the picture, each as it is. */
function greyOf(picture: ImageBitmap, { left, top, width, height }: ReturnType<typeof cropAbout>): Grey | undefined {
  const context = new OffscreenCanvas(width, height).getContext("2d", { willReadFrequently: true });
  if (context === null) return undefined;
  context.imageSmoothingEnabled = false;
  context.drawImage(picture, left, top, width, height, 0, 0, width, height);
  return greyFromRgba(context.getImageData(0, 0, width, height).data, width, height);
}

/** Both ends moved along the line between them to the strongest edge near each; undefined for an end without one. */
export function snapped(picture: ImageBitmap, [from, to]: readonly [End, End]): readonly [End | undefined, End | undefined] {
  const [dx, dy] = [to.x - from.x, to.y - from.y];
  const length = Math.hypot(dx, dy);
  if (!(length > 0)) return [undefined, undefined];
  const near = (end: End): End | undefined => {
    const crop = cropAbout(picture, end);
    const grey = greyOf(picture, crop);
    const found = grey && edgeAcross(grey, { x: end.x - crop.left, y: end.y - crop.top }, [dx / length, dy / length], reachOf(end));
    return found && { x: found.x + crop.left, y: found.y + crop.top, u: found.u };
  };
  return [near(from), near(to)];
}
