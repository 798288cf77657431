import { useLayoutEffect, useRef } from "preact/hooks";
import { ENLARGED, GLASS_RADIUS, type Spot } from "./view.ts";

/** Points that a device draws finer than this are drawn no finer: it costs time under the finger. */
export const FINEST = 2;

interface GlassProps {
  readonly picture: ImageBitmap;
  /** What is in its middle, pixels of the picture. */
  readonly spot: Spot;
  /** Pixels of the picture in a point of the stage. */
  readonly scale: number;
  /** Where its middle stands on the stage. */
  readonly at: Spot;
}

/** What lies about an end, enlarged from the picture's own pixels, with a cross where the end is. */
export function Glass({ picture, spot, scale, at }: GlassProps) {
  const canvas = useRef<HTMLCanvasElement>(null);
  const fine = Math.min(FINEST, globalThis.devicePixelRatio || 1);
  const side = Math.round(2 * GLASS_RADIUS * fine);
  useLayoutEffect(() => {
    const context = canvas.current?.getContext("2d");
    if (!context) return;
    const span = (2 * GLASS_RADIUS * scale) / ENLARGED;
    context.fillStyle = "#171510";
    context.fillRect(0, 0, side, side);
    // each pixel is shown as the square that it is, once it is large enough to be seen
    context.imageSmoothingEnabled = side / span < 6;
    context.drawImage(picture, spot.x - span / 2, spot.y - span / 2, span, span, 0, 0, side, side);
    const middle = side / 2;
    for (const [colour, width] of [
      ["#fffcf4", 5 * fine],
      ["#171510", 1.5 * fine],
    ] as const) {
      context.strokeStyle = colour;
      context.lineWidth = width;
      context.beginPath();
      for (const [dx, dy] of [
        [1, 0],
        [-1, 0],
        [0, 1],
        [0, -1],
      ] as const) {
        // open in the middle, so that the edge itself is seen
        context.moveTo(middle + 7 * fine * dx, middle + 7 * fine * dy);
        context.lineTo(middle + 34 * fine * dx, middle + 34 * fine * dy);
      }
      context.stroke();
    }
    context.fillStyle = "#fffcf4";
    context.fillRect(middle - 1.5 * fine, middle - 1.5 * fine, 3 * fine, 3 * fine);
    context.fillStyle = "#8e140d";
    context.fillRect(middle - fine, middle - fine, 2 * fine, 2 * fine);
  }, [picture, spot.x, spot.y, scale, side, fine]);
  return (
    <canvas
      ref={canvas}
      class="measure-glass"
      width={side}
      height={side}
      style={{ left: `${at.x - GLASS_RADIUS}px`, top: `${at.y - GLASS_RADIUS}px` }}
    />
  );
}
