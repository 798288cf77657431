import type { Pen } from "./pen.ts";

/** A sketch is drawn into the field from (80, 150) to (1520, 900). */
export type Sketch = (pen: Pen) => void;

const ground = (pen: Pen, y: number, from = 80, to = 1520): void => {
  pen.line(
    [
      [from, y],
      [to, y],
    ],
    { width: 5 },
  );
  pen.hatch(from, y + 4, to - from, 34);
};

const sitePlan: Sketch = (pen) => {
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

const groundMarks: Sketch = (pen) => {
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

const wallDetail: Sketch = (pen) => {
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

const basinSection: Sketch = (pen) => {
  ground(pen, 330, 80, 420);
  ground(pen, 330, 1180, 1520);
  pen.line([
    [420, 330],
    [450, 840],
    [1150, 840],
    [1180, 330],
  ]);
  pen.hatch(450, 846, 700, 40);
  const rim = pen.between(400, 430);
  pen.line(
    [
      [520, rim],
      [550, 800],
      [1050, 800],
      [1080, rim],
    ],
    { width: 9 },
  );
  pen.line(
    [
      [490, rim],
      [550, rim],
    ],
    { width: 9 },
  );
  pen.line(
    [
      [1050, rim],
      [1110, rim],
    ],
    { width: 9 },
  );
  pen.water(545, pen.between(540, 640), 510);
  pen.tape(1220, 360, 470, true);
  pen.shape(
    [
      [650, rim - 46],
      [950, rim - 46],
      [950, rim - 8],
      [650, rim - 8],
    ],
    { fill: "#f4d35e" },
  );
  pen.ellipse(800 + pen.between(-8, 8), rim - 27, 34, 12, { fill: "#dff0d8", width: 3 });
  pen.words("BED", 740, 812, 22);
  pen.words("BASIN", 720, 690, 30);
};

const fittingDetail: Sketch = (pen) => {
  pen.shape(
    [
      [730, 180],
      [800, 180],
      [800, 430],
      [730, 430],
    ],
    { fill: "#cfc7b7" },
  );
  pen.shape(
    [
      [730, 650],
      [800, 650],
      [800, 890],
      [730, 890],
    ],
    { fill: "#cfc7b7" },
  );
  pen.shape(
    [
      [660, 380],
      [700, 380],
      [700, 700],
      [660, 700],
    ],
    { fill: "#e9e2d2", width: 6 },
  );
  pen.shape(
    [
      [702, 390],
      [728, 390],
      [728, 690],
      [702, 690],
    ],
    { fill: "#3a3a3a" },
  );
  pen.shape(
    [
      [700, 450],
      [1060, 450],
      [1060, 630],
      [700, 630],
    ],
    { width: 6 },
  );
  for (let x = 820; x < 1040; x += 24) {
    pen.line(
      [
        [x, 450],
        [x + 14, 630],
      ],
      { width: 2 },
    );
  }
  pen.shape(
    [
      [806, 400],
      [880, 400],
      [880, 680],
      [806, 680],
    ],
    { fill: "#e9e2d2", width: 6 },
  );
  pen.line(
    [
      [770, 360],
      [pen.between(840, 900), 330],
    ],
    { width: 12, colour: "#c8452f" },
  );
  pen.words("WET SIDE", 260, 230, 32);
  pen.words("DRY SIDE", 1120, 230, 32);
  pen.arrow([480, 760], [712, 640]);
  pen.words("GASKET", 330, 770, 30);
  pen.arrow([1180, 780], [850, 690]);
  pen.words("NUT", 1190, 770, 30);
};

const pipeJoints: Sketch = (pen) => {
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

const trenchSection: Sketch = (pen) => {
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

const lipAndLevel: Sketch = (pen) => {
  ground(pen, 880);
  for (const [x, y] of [
    [300, 800],
    [560, 810],
    [820, 800],
    [1090, 812],
    [1320, 800],
  ] as const)
    pen.stone(x, y, 130, 60);
  pen.shape(
    [
      [260, 480],
      [1340, 480],
      [1300, 730],
      [300, 730],
    ],
    { fill: "#e9e2d2", width: 6 },
  );
  pen.shape(
    [
      [380, 420],
      [1220, 420],
      [1220, 472],
      [380, 472],
    ],
    { fill: "#f4d35e" },
  );
  pen.ellipse(800, 446, 44, 15, { fill: "#dff0d8" });
  pen.ellipse(800 + pen.between(-16, 16), 446, 12, 10, { width: 3 });
  pen.shape(
    [
      [1130, 473],
      [1200, 473],
      [1200, 482],
      [1130, 482],
    ],
    { fill: "#3a3a3a", width: 2 },
  );
  pen.arrow([1320, 330], [1170, 466]);
  pen.words("SHIM 1/32", 1240, 290, 26);
  pen.words("LIP", 760, 600, 36);
  for (let x = 420; x < 1200; x += 90) {
    pen.line(
      [
        [x, 740],
        [x + pen.between(-8, 8), 860],
      ],
      { width: 3, colour: "#1f5f6e" },
    );
  }
};

const linerPatch: Sketch = (pen) => {
  pen.shape(
    [
      [120, 260],
      [1480, pen.between(200, 260)],
      [1500, 860],
      [100, 880],
    ],
    { fill: "#57534c", width: 5 },
  );
  pen.shape(
    [
      [480, 330],
      [1120, 330],
      [1120, 790],
      [480, 790],
    ],
    { fill: "#77726a", width: 5 },
  );
  pen.circle(800, 560, 120, { width: 8, fill: "#e9e2d2" });
  pen.circle(800, 560, 86, { width: 5 });
  for (let i = 0; i < 8; i += 1) {
    const angle = (i / 8) * 2 * Math.PI;
    pen.circle(800 + 104 * Math.cos(angle), 560 + 104 * Math.sin(angle), 9, { width: 3 });
  }
  pen.tape(925, 620, 190, false);
  pen.line(
    [
      [160, 640],
      [480, 600],
    ],
    { width: 3, colour: "#f1e7cf", dash: "24 12" },
  );
  pen.words("LIGHT FROM THE SIDE", 180, 290, 26, 3, "#f1e7cf");
  pen.words("PATCH", 560, 380, 30, 4, "#f1e7cf");
};

const rockWork: Sketch = (pen) => {
  ground(pen, 890);
  for (let row = 0; row < 4; row += 1) {
    for (let i = 0; i < 6 - row; i += 1) {
      pen.stone(240 + row * 110 + i * 215 + pen.between(-18, 18), 810 - row * 150, pen.between(95, 125), pen.between(66, 84));
    }
  }
  for (let i = 0; i < 9; i += 1) {
    const x = 700 + i * 22;
    pen.line(
      [
        [x, 330],
        [x + pen.between(-14, 14), 480],
        [x + pen.between(-30, 30), 640],
        [x + pen.between(-40, 40), 800],
      ],
      { width: 3, colour: "#1f5f6e" },
    );
  }
  pen.words("FALLS", 980, 250, 30);
};

const lidAndPlate: Sketch = (pen) => {
  pen.circle(480, 540, 300, { width: 8, fill: "#e9e2d2" });
  pen.shape([
    [330, 420],
    [630, 420],
    [630, 660],
    [330, 660],
  ]);
  pen.circle(480, 540, 24);
  pen.arrow([480, 540], [480 + pen.between(160, 220), 540 - pen.between(120, 180)]);
  pen.words("LID OPENS THIS WAY", 300, 700, 24);
  pen.shape(
    [
      [900, 330],
      [1480, 330],
      [1480, 700],
      [900, 700],
    ],
    { fill: "#e4e4df", width: 6 },
  );
  for (const [x, y] of [
    [920, 350],
    [1460, 350],
    [920, 680],
    [1460, 680],
  ] as const)
    pen.circle(x, y, 8);
  pen.words("PUMP 115 V 60 HZ", 940, 400, 30);
  pen.words(`NO. ${String(Math.round(pen.between(100000, 999999)))}`, 940, 480, 38, 5);
  pen.words("140 W   20 FT CORD", 940, 570, 28);
};

export const sketches = {
  "site plan": sitePlan,
  "ground marks": groundMarks,
  "wall detail": wallDetail,
  "basin section": basinSection,
  "fitting detail": fittingDetail,
  "pipe joints": pipeJoints,
  "trench section": trenchSection,
  "lip and level": lipAndLevel,
  "liner patch": linerPatch,
  "rock work": rockWork,
  "lid and plate": lidAndPlate,
} as const satisfies Readonly<Record<string, Sketch>>;
export type SketchName = keyof typeof sketches;
