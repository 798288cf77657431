import type { Pen } from "./pen.ts";

/** A sketch is drawn into the field from (80, 150) to (1520, 900). */
export type Sketch = (pen: Pen) => void;

/** The ground's line with cut earth under it. */
export const ground = (pen: Pen, y: number, from = 80, to = 1520): void => {
  pen.line(
    [
      [from, y],
      [to, y],
    ],
    { width: 5 },
  );
  pen.hatch(from, y + 4, to - from, 34);
};
