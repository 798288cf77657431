import { cross, dot, plus, type Vector } from "./camera.ts";
import { type Look, meet, paint, type Surface } from "./surface.ts";

/** A stroke of paint or ink between two spots, metres in the plane that it is painted in. */
export type Stroke = readonly [x0: number, y0: number, x1: number, y1: number];

/** Whether a spot lies on one of the strokes. */
function onStroke(strokes: readonly Stroke[], half: number, x: number, y: number): boolean {
  for (const [x0, y0, x1, y1] of strokes) {
    const [dx, dy] = [x1 - x0, y1 - y0];
    const square = dx * dx + dy * dy;
    const along = square > 0 ? Math.max(0, Math.min(1, ((x - x0) * dx + (y - y0) * dy) / square)) : 0;
    const [ax, ay] = [x - x0 - along * dx, y - y0 - along * dy];
    if (ax * ax + ay * ay <= half * half) return true;
  }
  return false;
}

/** A surface with strokes on it, which lie as they are seen from straight above; `colour.key` is of its own. */
export function painted(surface: Surface, strokes: readonly Stroke[], width: number, colour: Look): Surface {
  return (origin, d, meeting) => {
    const before = meeting.t;
    surface(origin, d, meeting);
    if (meeting.t >= before || !onStroke(strokes, width / 2, meeting.x, meeting.y)) return;
    paint(meeting, colour, meeting.x, meeting.y);
  };
}

/** A flat strip such as a tape: its corner, two directions of length one at right angles, metres. */
export interface Strip {
  readonly from: Vector;
  readonly along: Vector;
  readonly across: Vector;
  readonly length: number;
  readonly width: number;
}

/** A strip with strokes, which lie in its own two directions. */
export function strip({ from, along, across, length, width }: Strip, look: Look, strokes: readonly Stroke[] = [], stroke = 0.001): Surface {
  const normal = cross(along, across);
  const ink: Look = { ...look, shade: 0.05, key: look.key + 1 };
  return (origin, d, meeting) => {
    const facing = (d[0] as number) * normal[0] + (d[1] as number) * normal[1] + (d[2] as number) * normal[2];
    const away = plus(from, origin, -1);
    const t = dot(away, normal) / facing;
    if (!(t > 1e-6 && t < meeting.t)) return;
    const spot = plus([t * (d[0] as number), t * (d[1] as number), t * (d[2] as number)], away, -1);
    const [a, b] = [dot(spot, along), dot(spot, across)];
    if (a < 0 || b < 0 || a > length || b > width) return;
    meet(meeting, origin, d, t, normal[0], normal[1], normal[2]);
    paint(meeting, onStroke(strokes, stroke / 2, a, b) ? ink : look, a, b);
  };
}

const INCH = 0.0254;

/** The marks of a tape in inches: half its width at each inch, all of it at each sixth. */
export const inchMarks = (length: number, width: number): readonly Stroke[] =>
  Array.from({ length: Math.floor(length / INCH) + 1 }, (_, i): Stroke => [i * INCH, 0, i * INCH, i % 6 === 0 ? width : width / 2]);
