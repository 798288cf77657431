import type { Spot } from "./view.ts";

/** Of a mark's ring, points of the screen. */
const RING = 18;

/** The line from ring to ring: what lies under the ends themselves stays in sight. */
export function Between({ from, to }: { readonly from: Spot; readonly to: Spot }) {
  const [dx, dy] = [to.x - from.x, to.y - from.y];
  const away = RING / Math.max(1, Math.hypot(dx, dy));
  if (away >= 0.5) return null;
  const [x1, y1, x2, y2] = [from.x + away * dx, from.y + away * dy, to.x - away * dx, to.y - away * dy];
  return (
    <>
      <line class="under" x1={x1} y1={y1} x2={x2} y2={y2} />
      <line x1={x1} y1={y1} x2={x2} y2={y2} />
    </>
  );
}

/** A ring that is open in the middle, with its number: black and white, so that sun and stone do not hide it. */
export function Mark({ at: { x, y }, which, chosen }: { readonly at: Spot; readonly which: number; readonly chosen: boolean }) {
  const cross = `M${x - 26} ${y}h20M${x + 6} ${y}h20M${x} ${y - 26}v20M${x} ${y + 6}v20`;
  return (
    <g class={chosen ? "mark chosen" : "mark"}>
      <circle class="under" cx={x} cy={y} r={RING} />
      <path class="under" d={cross} />
      <circle cx={x} cy={y} r={RING} />
      <path d={cross} />
      <text x={x + RING + 2} y={y - RING}>
        {which + 1}
      </text>
    </g>
  );
}
