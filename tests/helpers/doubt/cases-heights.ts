import type { Uncertain } from "#core/doubt/index.ts";
import {
  correctionFor,
  fitPlane,
  heightFromRod,
  type Mark,
  marksFromDistances,
  outOfLevel,
  type PlanPoint,
  placeByTies,
  setOut,
  waterLostToTilt,
} from "#core/geometry/index.ts";
import { CUBIC_METRES_PER_GALLON, inches, METRES_PER_INCH } from "#core/units/index.ts";
import { type DoubtCase, doubtCase } from "./by-chance.ts";
import { given, rod, taken, taped } from "./given.ts";

const [length, width] = [inches(60), inches(48)];
const corners = [
  [0, 0],
  [length, 0],
  [length, width],
  [0, width],
] as const;

type Rim = Readonly<Record<"a" | "b" | "c" | "d", Uncertain>>;
const levelOf = ({ a, b, c, d }: Rim) => {
  const places = [a, b, c, d].map((reading, i) => ({ x: corners[i]?.[0] ?? 0, y: corners[i]?.[1] ?? 0, height: heightFromRod(reading) }));
  return taken(outOfLevel(taken(fitPlane(places)).plane, length, width));
};
const rim = (a: number, b: number, c: number, d: number): Rim => ({ a: rod("a", a), b: rod("b", b), c: rod("c", c), d: rod("d", d) });

/**
 * Marks A and B on the house, C by two distances, and the joint by three: every one with the same tape. A (0, 0), B (20, 0),
 * C ((26² − 17² + 20²)/40, √(26² − x²)) = (19.675, 16.997), joint ((13² − 15² + 20²)/40, √(13² − x²)) = (8.6, 9.749), C to
 * joint √(11.075² + 7.248²) = 13.236 ft.
 */
const site = {
  ab: taped("A-B", 20),
  ac: taped("A-C", 26),
  bc: taped("B-C", 17),
  aj: taped("A-joint", 13),
  bj: taped("B-joint", 15),
  cj: taped("C-joint", 13.236),
};
function jointOf({ ab, ac, bc, aj, bj, cj }: Readonly<Record<keyof typeof site, Uncertain>>): PlanPoint {
  const tiesOfC = [
    { mark: "A", distance: ac },
    { mark: "B", distance: bc },
  ];
  const further = [{ name: "C", ties: tiesOfC, side: { from: "A", to: "B", side: "left" } }] as const;
  const marks: readonly Mark[] = taken(marksFromDistances({ first: "A", second: { name: "B", distance: ab }, further })).marks;
  const ties = [
    { mark: "A", distance: aj },
    { mark: "B", distance: bj },
    { mark: "C", distance: cj },
  ];
  const found = taken(placeByTies(marks, ties, { from: "A", to: "B", side: "left" }));
  if (found.kind !== "placed") throw new Error(found.kind);
  return found.point;
}

export const heightCases: readonly DoubtCase[] = [
  doubtCase({
    name: "water lost to a basin out of level, from four rod readings of one set-up",
    unit: "gal",
    per: 1 / CUBIC_METRES_PER_GALLON,
    inputs: { ...rim(41, 41.75, 42.25, 41.5) },
    figure: (of) => taken(waterLostToTilt(length * width, levelOf(of))),
  }),
  doubtCase({
    name: "the same of a basin that is level both ways within its doubt",
    unit: "gal",
    per: 1 / CUBIC_METRES_PER_GALLON,
    inputs: { ...rim(41, 41.03125, 41.03125, 41) },
    figure: (of) => taken(waterLostToTilt(length * width, levelOf(of))),
    bent: {
      mean: 1.2,
      u: 0.45,
      covers: 0.94,
      why: "a magnitude has a corner at zero: of a tilt smaller than its own doubt, chance makes one way or the other, never less than none. The draws lie above what is printed by most of a u and spread less, so that U is too large by a third and still holds them",
    },
  }),
  doubtCase({
    name: "what the rod is to read at the rim, from the reading on the height mark",
    unit: "in",
    per: 1 / METRES_PER_INCH,
    inputs: { mark: rod("mark", 36.1875), grade: given("mark over grade", inches(4), inches(0.25)) },
    figure: ({ mark, grade }) => {
      const heights = [{ place: "rim", over: "finished grade", aim: inches(-1) } as const];
      const [target] = taken(setOut(heights, mark, grade)).targets;
      if (!target) throw new Error("no target");
      return target.aim;
    },
  }),
  doubtCase({
    name: "height over its aim of what is there, set-up shared with the height mark",
    unit: "in",
    per: 1 / METRES_PER_INCH,
    inputs: { mark: rod("mark", 36.1875), there: rod("there", 41.5), grade: given("mark over grade", inches(4), inches(0.25)) },
    figure: ({ mark, there, grade }) => {
      const heights = [{ place: "rim", over: "finished grade", aim: inches(-1) } as const];
      const [target] = taken(setOut(heights, mark, grade)).targets;
      if (!target) throw new Error("no target");
      return taken(correctionFor(target, there)).overAim;
    },
  }),
  ...(["x", "y"] as const).map((axis) =>
    doubtCase({
      name: `${axis} of a joint tied to three marks, of which one is tied to the other two, with one tape`,
      unit: "in",
      per: 1 / METRES_PER_INCH,
      inputs: site,
      figure: (of) => jointOf(of)[axis],
      keepsDoubt: true,
      slow: 25,
    }),
  ),
];
