/** Millimetres of paper from a drawing's left and top edge, or pixels of a photo; y goes down. */
export interface PaperPoint {
  readonly x: number;
  readonly y: number;
}

/** The six numbers of an SVG `matrix(…)`: where a shape's own origin and axes lie on the paper. */
export type Placed = readonly [number, number, number, number, number, number];

export type Stroke = "outline" | "buried" | "hair" | "dimension" | "ground" | "water" | "ellipse" | "grid" | "advised" | "wish" | "bare";

export type DrawnShape =
  | { readonly shape: "line"; readonly stroke: Stroke; readonly points: readonly PaperPoint[]; readonly filled?: "water" | "ink" | "paper" }
  | {
      readonly shape: "ellipse";
      readonly stroke: Stroke;
      readonly placed: Placed;
      readonly rx: number;
      readonly ry: number;
      readonly filled?: "ink" | "paper";
    }
  | {
      readonly shape: "words";
      readonly placed: Placed;
      readonly text: string;
      readonly anchor: "start" | "middle" | "end";
      /** Height of the letters' body, millimetres. */
      readonly size: number;
      readonly heavy?: boolean;
    };

/** A drawing ready to be put on paper. */
export interface DrawingView {
  readonly width: number;
  readonly height: number;
  readonly title: string;
  /** What it shows, for whoever cannot see it. */
  readonly says: string;
  /** Its scale and whatever is not to scale, in words. */
  readonly scale: string;
  readonly shapes: readonly DrawnShape[];
}

/** A mark or a buried point with the distances that locate it. */
export interface TiedView {
  /** As on the drawing: a letter for a mark, a number for a point. */
  readonly sign: string;
  readonly name: string;
  /** As measured: 'A 8 ft 4 1/2 in; B 11 ft 2 1/4 in'. */
  readonly ties: string;
  /** How well it is placed, or that it is not drawn. */
  readonly place: string;
}

export interface PlanView {
  /** Absent where the marks cannot be placed; `notes` says why. */
  readonly drawing?: DrawingView;
  readonly tied: readonly TiedView[];
  readonly notes: readonly string[];
}

export interface SectionView {
  readonly drawing: DrawingView;
  readonly notes: readonly string[];
}

/** A figure of the design beside what was measured of it. */
export interface ComparedView {
  readonly title: string;
  readonly expected: string;
  readonly measured: string;
  readonly difference: string;
}

/** One line of the water budget. */
export interface BudgetView {
  readonly title: string;
  /** 'about 34.5 gal ± 3.1 gal', or the answer that stands in its place. */
  readonly value: string;
  /** Where most of its doubt comes from; empty where there is none. */
  readonly most: string;
  /** Warnings and cautions, in words. */
  readonly beside: string;
}

export interface GlueSessionView {
  readonly session: string;
  readonly pipe: string;
  readonly coldest: string;
  readonly lastJoint: string;
  readonly setUntil: string;
  readonly cureUntil: string;
  readonly dryAt: string;
  readonly by: string;
}

/** A test of start-up or a leak test. */
export interface TriedView {
  readonly title: string;
  /** Readings as typed. */
  readonly readings: string;
  readonly value: string;
  readonly limit: string;
  readonly says: string;
}
