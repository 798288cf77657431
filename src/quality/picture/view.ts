/** One way along a picture: figures, named places in their order, or moments (milliseconds). */
export interface PictureAxis {
  readonly label: string;
  readonly is: "figures" | "names" | "moments";
  /** Of named places, in the order in which they are drawn. */
  readonly names?: readonly string[];
  /** Of figures or moments, where the marks alone do not say it. */
  readonly reach?: readonly [number, number];
  /** Figures are shares of one, printed in hundredths. */
  readonly share?: boolean;
  /** Figures count something: no ticks between whole numbers. */
  readonly whole?: boolean;
  /** Figures count places from 1: what each of them is called. */
  readonly places?: readonly string[];
}

/** A place along an axis: a figure or moment, or the name of a place. */
export type Spot = number | string;

export const pointShapes = ["circle", "square", "triangle", "diamond", "times"] as const;
export type PointShape = (typeof pointShapes)[number];
export type LineLook = "whole" | "dashed" | "dotted";

/** What stands in a picture. Everything is black ink: shape, filling, dash and words tell one from another, never colour. */
export type PictureMark =
  | {
      readonly is: "points";
      readonly shape: PointShape;
      readonly filled: boolean;
      readonly points: readonly { readonly x: Spot; readonly y: Spot; readonly label?: string }[];
    }
  /** An interval from one figure to another, with closed ends. */
  | { readonly is: "intervals"; readonly intervals: readonly { readonly from: number; readonly to: number; readonly at: Spot }[] }
  | {
      readonly is: "line";
      readonly look: LineLook;
      readonly steps?: boolean;
      /** A filled circle at each of its points, but for bare ones. */
      readonly circles?: boolean;
      readonly points: readonly { readonly x: number; readonly y: number; readonly bare?: boolean }[];
    }
  /** A line right across at one figure of an axis, with what it says. */
  | { readonly is: "across"; readonly axis: "x" | "y"; readonly at: number; readonly look: LineLook; readonly label: string }
  /** Bars that lie along named places of y, or stand on figures of x. */
  | {
      readonly is: "bars";
      readonly along: "x" | "y";
      readonly bars: readonly { readonly at: Spot; readonly value: number; readonly label?: string }[];
    };

/** A picture as it will be drawn, every text in the reader's language. */
export interface PictureView {
  /** What it is called for whoever cannot see it. */
  readonly title: string;
  readonly x: PictureAxis;
  readonly y: PictureAxis;
  readonly marks: readonly PictureMark[];
  /** What shape and dash mean, where the picture itself does not say. */
  readonly key: readonly { readonly sign: PointShape | LineLook; readonly filled?: boolean; readonly says: string }[];
}
