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

const heights: Readonly<Record<string, Figure>> = {
  rimBelowGrade: finite(0.025, "design/rimBelowGrade"),
  basinHeight: notNegative(0.6, "design/basinHeight"),
  bedThickness: notNegative(0.1, "design/bedThickness"),
  fittingBelowRim: notNegative(0.2, "design/fittingBelowRim"),
  lipOverGrade: finite(0.9, "design/lipOverGrade"),
  linerEdgeOverLip: notNegative(0.1, "design/linerEdgeOverLip"),
};

export const geometryRows: Rows = {
  fourthPlace: refuses(rim, ({ height }, { x, y }) => geometry.fourthPlace(rimOf(x, y, height))),
  fitPlane: refuses(rim, ({ height }, { x, y }) => geometry.fitPlane(rimOf(x, y, height))),
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
