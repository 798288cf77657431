import * as geometry from "#core/geometry/index.ts";
import { carries, certain, exempt, type Figure, finite, notNegative, positive, type Rows, refuses, within } from "./rows.ts";

const plane = { a: certain(1), b: certain(0.01), c: certain(0.02) };
const square = [
  [0, 0],
  [1, 0],
  [1, 1],
  [0, 1],
] as const;
const rim = { x: finite(1, "points/1"), y: finite(0, "points/1"), height: finite(0.01, "points/1") };
const rimOf = (x: number, y: number, height: ReturnType<typeof certain>): readonly geometry.Place[] =>
  square.map(([px, py], i) => (i === 1 ? { x, y, height } : { x: px, y: py, height: certain(0) }));
const mark = (name: string, x: number, y: number): geometry.Mark => ({ name, x: certain(x), y: certain(y) });

const seen: geometry.SeenCode = {
  name: "a",
  corners: [
    { x: 100, y: 100, u: 0.05 },
    { x: 300, y: 110, u: 0.05 },
    { x: 310, y: 320, u: 0.05 },
    { x: 90, y: 300, u: 0.05 },
  ],
};
const printed: geometry.CardCode = {
  name: "a",
  corners: [
    { x: 0, y: 0 },
    { x: 50_000, y: 0 },
    { x: 50_000, y: 50_000 },
    { x: 0, y: 50_000 },
  ],
};
const picture: geometry.CardPicture = { width: 400, height: 400, codes: [seen] };
const cardPlane = (): geometry.CardPlane => {
  const found = geometry.cardPlane([printed], picture);
  if (!found.ok) throw new Error(found.refusal.code);
  return found.value;
};

const heights: Readonly<Record<string, Figure>> = {
  rimBelowGrade: finite(0.025, "design/rimBelowGrade"),
  basinHeight: notNegative(0.6, "design/basinHeight"),
  bedThickness: notNegative(0.1, "design/bedThickness"),
  fittingBelowRim: notNegative(0.2, "design/fittingBelowRim"),
  lipOverGrade: finite(0.9, "design/lipOverGrade"),
  linerEdgeOverLip: notNegative(0.1, "design/linerEdgeOverLip"),
};

export const geometryRows: Rows = {
  cardPlane: refuses(
    { width: positive(400, "picture"), height: positive(400, "picture"), x: finite(100, "picture"), u: positive(0.05, "picture") },
    (_, { width, height, x, u }) => {
      const [first, ...rest] = seen.corners;
      const codes = [{ ...seen, corners: [{ ...first, x, u }, ...rest] as geometry.FourSpots<geometry.SeenCorner> }];
      return geometry.cardPlane([printed], { width, height, codes });
    },
  ),
  photoLength: refuses(
    { x: finite(120, "taps"), tap: notNegative(0.5, "doubts"), lean: notNegative(1000, "doubts") },
    (_, { x, tap, lean }) =>
      geometry.photoLength(cardPlane(), { x, y: 150 }, { x: 280, y: 290 }, { tap, height: 500, lean, print: 1000, placing: 0 }),
  ),
  standFor: exempt("for a plane and a length that were worked out here"),
  lensFrom: exempt("for planes that were worked out here"),
  homographyFrom: refuses({ x: finite(0, "pairs"), u: finite(100, "pairs") }, (_, { x, u }) =>
    geometry.homographyFrom([
      { from: { x, y: 0 }, to: { x: u, y: 100 } },
      { from: { x: 1, y: 0 }, to: { x: 300, y: 110 } },
      { from: { x: 1, y: 1 }, to: { x: 310, y: 320 } },
      { from: { x: 0, y: 1 }, to: { x: 90, y: 300 } },
    ]),
  ),
  mapSpot: carries((odd) => {
    const { x } = geometry.mapSpot([1, 0, 0, 0, 1, 0, 0, 0, 1], { x: odd, y: 1 });
    return [x];
  }),
  turnedBack: carries((odd) => [...geometry.turnedBack([odd, 0, 0, 0, 1, 0, 0, 0, 1])].slice(4, 5)),
  fourthPlace: refuses(rim, ({ height }, { x, y }) => geometry.fourthPlace(rimOf(x, y, height))),
  fitPlane: refuses(rim, ({ height }, { x, y }) => geometry.fitPlane(rimOf(x, y, height))),
  planeThrough: refuses(rim, ({ height }, { x, y }) => geometry.planeThrough(rimOf(x, y, height))),
  planeAt: carries((odd) => [
    geometry.planeAt(plane, odd, 1),
    geometry.planeAt(plane, 1, odd),
    geometry.planeAt({ ...plane, a: certain(odd) }, 1, 1),
  ]),
  risesAcross: carries((odd) => [geometry.risesAcross(plane, odd, 1).x, geometry.risesAcross(plane, 1, odd).y]),
  greatCircle: refuses(
    {
      latitude: within(40, "from", -90, 90),
      longitude: within(-74, "from", -180, 180),
      toLatitude: within(51, "to", -90, 90),
      toLongitude: within(0, "to", -180, 180),
    },
    (_, { latitude, longitude, toLatitude, toLongitude }) =>
      geometry.greatCircle({ latitude, longitude }, { latitude: toLatitude, longitude: toLongitude }),
  ),
  outOfLevel: refuses({ extentX: positive(1.5, "extentX"), extentY: positive(1.2, "extentY") }, (_, { extentX, extentY }) =>
    geometry.outOfLevel(plane, extentX, extentY),
  ),
  waterLostToTilt: refuses({ planArea: positive(1.8, "planArea") }, (_, { planArea }) =>
    geometry.waterLostToTilt(planArea, { total: certain(0.01) }),
  ),
  rimBelowFinishedGrade: carries((odd) => [
    geometry.rimBelowFinishedGrade([certain(odd), certain(1)], certain(1)),
    geometry.rimBelowFinishedGrade([certain(1)], certain(odd)),
  ]),
  movedSince: carries((odd) => [geometry.movedSince(certain(odd), certain(1)), geometry.movedSince(certain(1), certain(odd))]),
  lipOutOfLevel: carries((odd) => [geometry.lipOutOfLevel([certain(odd), certain(1)]), geometry.lipOutOfLevel([certain(1), certain(odd)])]),
  heightFromRod: carries((odd) => [geometry.heightFromRod(certain(odd))]),
  setOut: refuses(
    {
      aim: finite(-0.025, "heights/rim"),
      lowBy: notNegative(0.01, "heights/rim"),
      highBy: notNegative(0.01, "heights/rim"),
      markReading: finite(0.9, "markReading"),
      markOverGrade: finite(0.1, "markOverGrade"),
    },
    ({ markReading, markOverGrade }, { aim, lowBy, highBy }) =>
      geometry.setOut([{ place: "rim", over: "finished grade", aim, lowBy, highBy }], markReading, markOverGrade),
  ),
  correctionFor: refuses(
    { aim: finite(1, "readings/rim"), reading: finite(1.01, "readings/rim"), step: notNegative(0.001, "step") },
    ({ aim, reading }, { step }) => geometry.correctionFor({ place: "rim", aim }, reading, step),
  ),
  heightsFromDesign: refuses(heights, (_, plain) => geometry.heightsFromDesign({ ...plain })),
  placeByTies: refuses(
    { first: positive(4, "ties/A"), second: positive(5, "ties/B"), markX: finite(6, "points"), markY: finite(0.5, "points") },
    ({ first, second, markX, markY }) =>
      geometry.placeByTies(
        [mark("A", 0, 0), { name: "B", x: markX, y: markY }],
        [
          { mark: "A", distance: first },
          { mark: "B", distance: second },
        ],
      ),
  ),
  marksFromDistances: refuses(
    { second: positive(6, "marks/B"), first: positive(4, "ties/A"), other: positive(5, "ties/B") },
    ({ second, first, other }) =>
      geometry.marksFromDistances({
        first: "A",
        second: { name: "B", distance: second },
        further: [
          {
            name: "C",
            ties: [
              { mark: "A", distance: first },
              { mark: "B", distance: other },
            ],
            side: { from: "A", to: "B", side: "left" },
          },
        ],
      }),
  ),
  crossingAt: carries((odd) => [
    geometry.crossingAt(mark("A", odd, 0), mark("B", 1, 0), { x: 0, y: 1 }).sine,
    geometry.crossingAt(mark("A", 0, 0), mark("B", 1, 0), { x: odd, y: 1 }).sine,
  ]),
  crossings: carries((odd) => geometry.crossings([mark("A", 0, 0), mark("B", 1, 0)], { x: 0.5, y: odd }).map(({ sine }) => sine)),
  degreesBetween: exempt("for two directions between places that their caller has looked at"),
  errorEllipse: exempt("of doubts alone: a point that was placed; whoever places it looks at its figures"),
  levelDistance: refuses({ slope: positive(3, "slope"), rise: finite(0.5, "slope") }, (of) => geometry.levelDistance(of.slope, of.rise)),
  planDistance: refuses({ x: finite(3, "points"), y: finite(0.5, "points") }, ({ x, y }) =>
    geometry.planDistance({ x: certain(0), y: certain(0) }, { x, y }),
  ),
  fitToSheet: refuses(
    { x: finite(3, "points"), y: finite(2, "points"), width: positive(0.2, "width"), height: positive(0.2, "height") },
    (_, { x, y, width, height }) =>
      geometry.fitToSheet(
        [
          { x: 0, y: 0 },
          { x, y },
        ],
        width,
        height,
      ),
  ),
  onSheet: carries((odd) => {
    const { x, y } = geometry.onSheet({ scale: { ratio: 20 }, offset: { x: 0.1, y: 0.1 } }, { x: odd, y: odd });
    return [x, y];
  }),
};
