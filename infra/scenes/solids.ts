import type { Vector } from "./camera.ts";
import { type Look, meet, paint, type Surface } from "./surface.ts";

export type Opening =
  | { readonly round: true; readonly x: number; readonly y: number; readonly radius: number }
  | { readonly round: false; readonly x0: number; readonly y0: number; readonly x1: number; readonly y1: number };

const within = (opening: Opening, x: number, y: number): boolean =>
  opening.round
    ? (x - opening.x) * (x - opening.x) + (y - opening.y) * (y - opening.y) < opening.radius * opening.radius
    : x > opening.x0 && x < opening.x1 && y > opening.y0 && y < opening.y1;

/** Level ground at a height, with openings; or only what lies within `only`. */
export function level(z: number, look: Look, openings: readonly Opening[] = [], only?: Opening): Surface {
  return (origin, d, meeting) => {
    const t = (z - origin[2]) / (d[2] as number);
    if (!(t > 1e-6 && t < meeting.t)) return;
    const [x, y] = [origin[0] + t * (d[0] as number), origin[1] + t * (d[1] as number)];
    if (only !== undefined && !within(only, x, y)) return;
    for (const opening of openings) if (within(opening, x, y)) return;
    meet(meeting, origin, d, t, 0, 0, 1);
    paint(meeting, look, x, y);
  };
}

/** Wall of a round shaft or the mantle of a cylinder: about an axis through `base` along `axis` (length one), from 0 to `length`. */
export function mantle(base: Vector, axis: Vector, radius: number, length: number, look: Look): Surface {
  const [ax, ay, az] = axis;
  return (origin, d, meeting) => {
    const [dx, dy, dz] = [d[0] as number, d[1] as number, d[2] as number];
    const [ox, oy, oz] = [origin[0] - base[0], origin[1] - base[1], origin[2] - base[2]];
    const [along, start] = [dx * ax + dy * ay + dz * az, ox * ax + oy * ay + oz * az];
    const [px, py, pz] = [dx - along * ax, dy - along * ay, dz - along * az];
    const [qx, qy, qz] = [ox - start * ax, oy - start * ay, oz - start * az];
    const a = px * px + py * py + pz * pz;
    const b = px * qx + py * qy + pz * qz;
    const c = qx * qx + qy * qy + qz * qz - radius * radius;
    const root = b * b - a * c;
    if (!(root >= 0 && a > 0)) return;
    const far = Math.sqrt(root);
    for (const t of [(-b - far) / a, (-b + far) / a]) {
      const at = start + t * along;
      if (!(t > 1e-6 && t < meeting.t && at >= 0 && at <= length)) continue;
      const [nx, ny, nz] = [(qx + t * px) / radius, (qy + t * py) / radius, (qz + t * pz) / radius];
      meet(meeting, origin, d, t, nx, ny, nz);
      paint(meeting, look, at, meeting.x + meeting.y);
      return;
    }
  };
}

/** Flat disc or ring with a normal: the end of a pipe, the rim of a basin. */
export function ring(middle: Vector, normal: Vector, inner: number, outer: number, look: Look): Surface {
  return (origin, d, meeting) => {
    const facing = (d[0] as number) * normal[0] + (d[1] as number) * normal[1] + (d[2] as number) * normal[2];
    const t = ((middle[0] - origin[0]) * normal[0] + (middle[1] - origin[1]) * normal[1] + (middle[2] - origin[2]) * normal[2]) / facing;
    if (!(t > 1e-6 && t < meeting.t)) return;
    const [x, y, z] = [origin[0] + t * (d[0] as number), origin[1] + t * (d[1] as number), origin[2] + t * (d[2] as number)];
    const square = (x - middle[0]) ** 2 + (y - middle[1]) ** 2 + (z - middle[2]) ** 2;
    if (square < inner * inner || square > outer * outer) return;
    meet(meeting, origin, d, t, normal[0], normal[1], normal[2]);
    paint(meeting, look, x, y);
  };
}

interface Face {
  readonly axis: 0 | 1 | 2;
  readonly at: number;
}

/** Faces of a box whose sides run along the axes; seen from within it is a trench. `top` and `bottom` say which lids it has. */
export function box(low: Vector, high: Vector, look: Look, lids: { readonly top: boolean; readonly bottom: boolean }): Surface {
  const faces = ([0, 1, 2] as const).flatMap((axis): readonly Face[] => [
    ...(axis < 2 || lids.bottom ? [{ axis, at: low[axis] }] : []),
    ...(axis < 2 || lids.top ? [{ axis, at: high[axis] }] : []),
  ]);
  return (origin, d, meeting) => {
    for (let i = 0; i < faces.length; i++) {
      const { axis, at } = faces[i] as Face;
      const step = d[axis] as number;
      const t = (at - origin[axis]) / step;
      if (step === 0 || !(t > 1e-6 && t < meeting.t)) continue;
      const one = ((axis + 1) % 3) as Face["axis"];
      const two = ((axis + 2) % 3) as Face["axis"];
      const a = origin[one] + t * (d[one] as number);
      const b = origin[two] + t * (d[two] as number);
      if (a < low[one] || a > high[one] || b < low[two] || b > high[two]) continue;
      meet(meeting, origin, d, t, axis === 0 ? 1 : 0, axis === 1 ? 1 : 0, axis === 2 ? 1 : 0);
      paint(meeting, look, a, b);
    }
  };
}
