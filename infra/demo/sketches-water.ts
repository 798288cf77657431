import { ground, type Sketch } from "./sketch.ts";

export const lipAndLevel: Sketch = (pen) => {
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

export const linerPatch: Sketch = (pen) => {
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

export const rockWork: Sketch = (pen) => {
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

export const lidAndPlate: Sketch = (pen) => {
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
