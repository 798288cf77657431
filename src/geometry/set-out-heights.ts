import { type Outcome, ok, refuse } from "../outcome/index.ts";

/** Places that are set out by rod, from the lowest up as they are worked. */
export const setOutPlaces = ["dug bottom", "top of bed", "rim", "wall fitting", "spillway lip", "liner edge"] as const;
export type SetOutPlace = (typeof setOutPlaces)[number];

/** A height that the work is to reach, metres, up positive, over finished grade or over the height mark itself. */
export interface SetOutHeight {
  readonly place: SetOutPlace;
  readonly over: "finished grade" | "height mark";
  readonly aim: number;
  /** How far below and above the aim the limit lies, metres, not negative; absent: no limit that way. */
  readonly lowBy?: number;
  readonly highBy?: number;
}

/** What the heights are made of, metres, each as the design or a kit card states it; what is absent is named, the rest stands. */
export interface SetOutDesign {
  /** Depth of the rim below finished grade; negative for a rim above it. */
  readonly rimBelowGrade?: number;
  /** Basin from the underside of its bottom to the rim. */
  readonly basinHeight?: number;
  readonly bedThickness?: number;
  /** Middle of the wall fitting below the rim. */
  readonly fittingBelowRim?: number;
  readonly lipOverGrade?: number;
  /** Liner's edge over the spillway's lip: over the highest water. */
  readonly linerEdgeOverLip?: number;
}
export type SetOutFigure = keyof SetOutDesign;

const sizes: readonly SetOutFigure[] = ["basinHeight", "bedThickness", "fittingBelowRim", "linerEdgeOverLip"];

/** Signed figures that add up to each place's height over finished grade. */
const madeOf: Readonly<Record<SetOutPlace, readonly (readonly [sign: 1 | -1, figure: SetOutFigure])[]>> = {
  "dug bottom": [
    [-1, "rimBelowGrade"],
    [-1, "basinHeight"],
    [-1, "bedThickness"],
  ],
  "top of bed": [
    [-1, "rimBelowGrade"],
    [-1, "basinHeight"],
  ],
  rim: [[-1, "rimBelowGrade"]],
  "wall fitting": [
    [-1, "rimBelowGrade"],
    [-1, "fittingBelowRim"],
  ],
  "spillway lip": [[1, "lipOverGrade"]],
  "liner edge": [
    [1, "lipOverGrade"],
    [1, "linerEdgeOverLip"],
  ],
};

/** How far below and above its aim each place may lie, metres: the tolerance sheet's. */
export type SetOutLimits = Readonly<Partial<Record<SetOutPlace, Pick<SetOutHeight, "lowBy" | "highBy">>>>;

export interface DesignHeights {
  readonly heights: readonly SetOutHeight[];
  readonly missing: readonly { readonly place: SetOutPlace; readonly figures: readonly SetOutFigure[] }[];
}

/** The heights over finished grade that a design leads to. Refuses figures that are not finite, and sizes below zero. */
export function heightsFromDesign(design: SetOutDesign, limits: SetOutLimits = {}): Outcome<DesignHeights> {
  for (const [figure, value] of Object.entries(design)) {
    if (!Number.isFinite(value)) return refuse("number-not-finite", `design/${figure}`);
    if (value < 0 && sizes.some((size) => size === figure)) return refuse("number-not-positive", `design/${figure}`);
  }
  const heights: SetOutHeight[] = [];
  const missing: { place: SetOutPlace; figures: readonly SetOutFigure[] }[] = [];
  for (const place of setOutPlaces) {
    const figures = madeOf[place].flatMap(([, figure]) => (design[figure] === undefined ? [figure] : []));
    if (figures.length > 0) missing.push({ place, figures });
    else {
      const aim = madeOf[place].reduce((height, [sign, figure]) => height + sign * (design[figure] ?? 0), 0);
      heights.push({ place, over: "finished grade", aim, ...limits[place] });
    }
  }
  return ok({ heights, missing });
}
