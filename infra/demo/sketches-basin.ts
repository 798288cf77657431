import { ground, type Sketch } from "./sketch.ts";

export const basinSection: Sketch = (pen) => {
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

export const fittingDetail: Sketch = (pen) => {
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
