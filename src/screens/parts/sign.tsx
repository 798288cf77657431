import type { ComponentChildren } from "preact";
import type { Shape } from "./shapes.ts";

/** The drawn signs, one shape each: they say without colour what the word beside them says. The record's shapes are the same. */
const shapes = {
  within: (
    <>
      <circle class="full" cx="6" cy="6" r="5.2" />
      <path class="cut" d="M3.3 6.2l1.9 1.9 3.5-4" />
    </>
  ),
  outside: (
    <>
      <path class="full" d="M.7 1.1h10.6L6 11.2z" />
      <path class="cut" d="M6 3v3.2M6 7.3v1.1" />
    </>
  ),
  undecided: (
    <>
      <path class="line" d="M6 .9L11.1 6 6 11.1.9 6z" />
      <path class="full" d="M6 .9v10.2L.9 6z" />
    </>
  ),
  missing: <path class="line dashed" d="M1.3 1.3h9.4v9.4H1.3z" />,
  apart: (
    <>
      <circle class="line" cx="6" cy="6" r="5" />
      <path class="line" d="M3 6h6" />
    </>
  ),
  word: (
    <>
      <circle class="line" cx="6" cy="6" r="5" />
      <path class="line" d="M3.3 6.2l1.9 1.9 3.5-4" />
    </>
  ),
} as const satisfies Readonly<Record<Shape, ComponentChildren>>;

interface SignProps {
  readonly shape: Shape;
  /** In ink: red is kept for what can hold a covering. */
  readonly quiet?: boolean;
}

/** Hidden from readers of the text: the word always stands beside it. */
export const Sign = ({ shape, quiet = false }: SignProps) => (
  <svg class={quiet ? "sign" : `sign sign-${shape}`} viewBox="0 0 12 12" aria-hidden="true" focusable="false">
    {shapes[shape]}
  </svg>
);

/** Strokes of undisturbed earth under a surface, in threes, on both sides of the cut. */
const earth = [-1, 1]
  .flatMap((side) => [100, 152, 204, 256, 308, 360, 412, 464, 516].map((far) => 180 + side * far))
  .map((x) => `M${x - 8} 13l-8 9m16-9l-8 9m16-9l-8 9`)
  .join("");
const fill = "M132 20l-6 7m34 3l-6 7m30-20l-6 7m32 4l-6 7m30-16l-6 7m26 6l-6 7M144 38l-5 6m79-5l-5 6";

/** Ground in section: an open cut with the pipe in it, or the same cut filled. It runs on beyond the box on both sides. */
export const GroundCut = ({ filled }: { readonly filled: boolean }) => (
  <svg class="ground" viewBox="0 0 360 54" preserveAspectRatio="xMidYMin meet" aria-hidden="true" focusable="false">
    <path class="earth" d={earth} />
    <path class="surface" d={filled ? "M-900 11h2160" : "M-900 11h1008l12 38h120l12-38h1008"} />
    {filled && <path class="old-cut" d="M108 11l12 38h120l12-38" />}
    {filled && <path class="earth" d={fill} />}
    <circle class="pipe" cx="180" cy="38" r="7.5" />
    <path class="axis" d="M168 38h24M180 26v24" />
  </svg>
);
