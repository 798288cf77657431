import { ground, type Sketch } from "./sketch.ts";

export const sitePlan: Sketch = (pen) => {
  pen.shape(
    [
      [140, 190],
      [700, 190],
      [700, 470],
      [140, 470],
    ],
    { fill: "#e6dcc8" },
  );
  pen.words("HOUSE", 340, 315, 34);
  pen.shape([
    [760, 190],
    [960, 190],
    [960, 880],
    [760, 880],
  ]);
  pen.words("DRIVE", 790, 520, 28);
  pen.circle(pen.between(340, 420), 720, 105, { dash: "18 12" });
  pen.words("BASIN", 320, 705, 28);
  pen.line(
    [
      [470, 690],
      [pen.between(580, 640), 600],
      [700, 560],
    ],
    { dash: "24 10" },
  );
  pen.stone(1180, 420, 90, 60);
  pen.stone(1330, 480, 70, 50);
  pen.line([
    [1040, 820],
    [1160, 780],
    [1260, 820],
    [1440, 770],
  ]);
  pen.words("WALL, CRACK SEEN", 1060, 840, 24);
  pen.arrow([1450, 300], [1450, 190]);
  pen.words("N", 1435, 315, 34);
};

export const groundMarks: Sketch = (pen) => {
  for (let i = 0; i < 26; i += 1) {
    const [x, y] = [pen.between(100, 1480), pen.between(200, 880)];
    pen.line(
      [
        [x, y],
        [x + 8, y - 26],
        [x + 16, y],
      ],
      { width: 2, colour: "#5f7a3d" },
    );
  }
  const slant = pen.between(-60, 60);
  pen.line(
    [
      [140, 380],
      [760, 420 + slant],
      [1460, 380 + slant],
    ],
    { width: 14, colour: "#c8452f" },
  );
  pen.line(
    [
      [260, 860],
      [620, 560],
      [1180, 240],
    ],
    { width: 14, colour: "#2f6fb0", dash: "70 30" },
  );
  pen.words("POWER", 1180, 310 + slant, 34);
  pen.words("WATER", 380, 800, 34);
  pen.circle(820, 640, 150, { dash: "18 12" });
  pen.words("HOLE", 765, 625, 30);
};

export const wallDetail: Sketch = (pen) => {
  for (let y = 170; y < 880; y += 74) {
    pen.line(
      [
        [100, y],
        [760, y],
      ],
      { width: 2, colour: "#8a7f6d" },
    );
    for (let x = 120 + (y % 148 > 74 ? 60 : 0); x < 760; x += 130) {
      pen.line(
        [
          [x, y],
          [x, y + 70],
        ],
        { width: 2, colour: "#8a7f6d" },
      );
    }
  }
  const y = pen.between(400, 460);
  pen.shape(
    [
      [320, y],
      [540, y],
      [540, y + 220],
      [320, y + 220],
    ],
    { fill: "#f2efe6", width: 6 },
  );
  pen.line([
    [320, y],
    [280, y - 110],
    [500, y - 110],
    [540, y],
  ]);
  pen.circle(430, y + 70, 26);
  pen.circle(430, y + 150, 26);
  pen.words("LID UP", 580, y - 90, 30);
  pen.arrow([900, 300], [560, y + 60]);
  pen.words("TEST AND RESET", 880, 255, 30);
  ground(pen, 890);
  pen.tape(1100, 330, 540, true);
  pen.words("HEIGHT MARK", 1170, 540, 30);
  pen.line(
    [
      [1000, 590],
      [1440, 590],
    ],
    { width: 6 },
  );
};
