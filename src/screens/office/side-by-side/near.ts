/** How two frames are looked into: enlarged so many times, with the upper left corner of the picture at `x`, `y`, in shares of the frame. */
export interface Near {
  readonly times: number;
  readonly x: number;
  readonly y: number;
}

export const whole: Near = { times: 1, x: 0, y: 0 };
export const MOST_TIMES = 12;

// a picture never leaves its frame
const held = (corner: number, times: number): number => Math.min(0, Math.max(1 - times, corner));

/** Enlarged by a factor about a spot of the frame, which stays where it is. */
export function nearer({ times, x, y }: Near, factor: number, spot: { readonly x: number; readonly y: number } = { x: 0.5, y: 0.5 }): Near {
  const next = Math.min(MOST_TIMES, Math.max(1, times * factor));
  const grown = next / times;
  return { times: next, x: held(spot.x - (spot.x - x) * grown, next), y: held(spot.y - (spot.y - y) * grown, next) };
}

/** Moved by shares of the frame. */
export const moved = ({ times, x, y }: Near, right: number, down: number): Near => ({
  times,
  x: held(x + right, times),
  y: held(y + down, times),
});

const STEP = 0.1;
const keys: Readonly<Record<string, (near: Near) => Near>> = {
  "+": (near) => nearer(near, 1.5),
  "=": (near) => nearer(near, 1.5),
  "-": (near) => nearer(near, 1 / 1.5),
  "0": () => whole,
  ArrowLeft: (near) => moved(near, STEP, 0),
  ArrowRight: (near) => moved(near, -STEP, 0),
  ArrowUp: (near) => moved(near, 0, STEP),
  ArrowDown: (near) => moved(near, 0, -STEP),
};

/** What a key does; undefined for any other. */
export const byKey = (near: Near, key: string): Near | undefined => (Object.hasOwn(keys, key) ? keys[key]?.(near) : undefined);
