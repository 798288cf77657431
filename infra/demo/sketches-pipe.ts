import type { Sketch } from "./sketch.ts";

export const pipeJoints: Sketch = (pen) => {
  const y = pen.between(430, 500);
  pen.line(
    [
      [100, y],
      [560, y],
    ],
    { width: 6 },
  );
  pen.line(
    [
      [100, y + 110],
      [560, y + 110],
    ],
    { width: 6 },
  );
  pen.shape(
    [
      [560, y - 24],
      [860, y - 24],
      [860, y + 134],
      [560, y + 134],
    ],
    { fill: "#e9e2d2", width: 6 },
  );
  pen.line(
    [
      [860, y],
      [1500, y],
    ],
    { width: 6 },
  );
  pen.line(
    [
      [860, y + 110],
      [1500, y + 110],
    ],
    { width: 6 },
  );
  pen.line(
    [
      [540, y - 10],
      [540, y + 120],
    ],
    { width: 9, colour: "#c8452f" },
  );
  pen.words(String(Math.round(pen.between(1, 9))), 680, y + 22, 66, 9, "#2f6fb0");
  pen.shape(
    [
      [180, 660],
      [330, 660],
      [330, 870],
      [180, 870],
    ],
    { fill: "#d9cfe4" },
  );
  pen.words("PRIMER", 190, 750, 20);
  pen.shape(
    [
      [380, 660],
      [530, 660],
      [530, 870],
      [380, 870],
    ],
    { fill: "#dfe4cf" },
  );
  pen.words("CEMENT", 390, 750, 20);
  pen.arrow([420, 260], [536, y - 16]);
  pen.words("WITNESS MARK", 240, 210, 30);
  pen.words("PRINT LINE 2 IN", 980, y + 40, 24);
};

export const trenchSection: Sketch = (pen) => {
  pen.line([
    [80, 300],
    [430, 300],
    [520, 840],
    [1080, 840],
    [1170, 300],
    [1520, 300],
  ]);
  pen.hatch(80, 306, 350, 40);
  pen.hatch(1180, 306, 340, 40);
  pen.circle(800, 760, 70, { width: 8 });
  pen.circle(800, 760, 56, { width: 3 });
  pen.line(
    [
      [300, 278],
      [1300, 278],
    ],
    { width: 10 },
  );
  pen.words("STRAIGHT-EDGE", 640, 215, 28);
  pen.tape(pen.between(780, 800), 290, 400, true);
  pen.words("SHALLOWEST", 880, 560, 28);
  const run = pen.between(0, 120);
  pen.line(
    [
      [100, 520 + run],
      [250, 480 + run],
      [380, 520 + run],
    ],
    { dash: "20 10", width: 3 },
  );
  pen.circle(180, 560, 10);
  pen.line(
    [
      [180, 560],
      [800, 760],
    ],
    { dash: "10 10", width: 2 },
  );
  pen.words("TIE", 320, 570, 24);
};
