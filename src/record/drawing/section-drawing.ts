import { drawingScales } from "../../geometry/index.ts";
import { type Outcome, ok, refuse } from "../../outcome/index.ts";
import type { DrawingView, DrawnShape, PaperPoint } from "../model-drawn.ts";
import type { SayArithmetic } from "../say-arithmetic.ts";
import { dimension, measure } from "./dimension.ts";
import { scaleSaid, scalesFor, type Units } from "./scale-said.ts";
import { at, LETTERS, line, words, wordsThrough } from "./strokes.ts";

/** A height with the words that go beside it, metres over finished grade. */
export interface Height {
  readonly over: number;
  readonly text: string;
}

export interface SectionToDraw {
  readonly rim: Height;
  readonly floor: Height;
  readonly rest?: Height;
  readonly running?: Height;
  readonly intake?: Height;
  /** The lip, with the static head's words: from the running water up to it. */
  readonly lip?: Height;
  readonly pipeRun?: string;
  /** The figures in one sentence, for whoever cannot see the drawing. */
  readonly says: string;
  readonly units: Units;
}

const WIDTH = 172;
const TALLEST = 62;
const ABOVE = 9;
const BELOW = 9;
/** Where things stand across the paper: nothing of it is to scale. */
const across = { start: 2, chain: 42, basin: 49, wall: 105, head: 116, rise: 146, end: 170 } as const;

const soil = (from: number, to: number, y: number): readonly DrawnShape[] =>
  Array.from({ length: Math.floor((to - from) / 4) }, (_, i) => line("hair", [at(from + i * 4 + 2.2, y), at(from + i * 4 + 0.6, y + 1.6)]));

const STEP = 3;

/** Words on their lines, the first one's middle at `top`, ending at `x`. */
const endingAt = (x: number, top: number, text: string): readonly DrawnShape[] =>
  text.split("\n").map((one, i) => wordsThrough(at(x, top + i * STEP), one, { anchor: "end" }));

/**
 * Basin, water levels, ground and lip seen from the side, heights to the largest usual scale that fits; the pipe's course is a sketch.
 * Refuses heights that no scale can hold.
 */
export function sectionDrawing(section: SectionToDraw, say: SayArithmetic): Outcome<DrawingView> {
  const { rim, floor, rest, running, intake, lip, pipeRun, units, says } = section;
  const top = Math.max(0, lip?.over ?? 0);
  const scale = drawingScales[scalesFor(units)].find(({ ratio }) => (top - floor.over) * 1000 <= TALLEST * ratio);
  if (scale === undefined || !Number.isFinite(top - floor.over)) return refuse("drawing-does-not-fit", "points");
  const y = (over: number): number => ABOVE + ((top - over) * 1000) / scale.ratio;
  const grade = y(0);
  const bottom = y(floor.over);
  const height = bottom + BELOW;

  const level = (of: Height, side: "left" | "right"): readonly DrawnShape[] => {
    const here = y(of.over);
    const left = side === "left";
    const tip = left ? across.basin + 3 : across.wall - 3;
    return [
      line("water", [at(across.basin, here), at(across.wall, here)]),
      line("water", [at(tip, here), at(tip - 1.1, here - 1.6), at(tip + 1.1, here - 1.6), at(tip, here)], "paper"),
      words(at(left ? across.basin + 5.5 : across.wall - 5.5, here + (left ? -0.8 : LETTERS)), of.text, {
        anchor: left ? "start" : "end",
        size: 2.1,
      }),
    ];
  };

  const chain = (from: number, to: Height, lettersAt: number): readonly DrawnShape[] => [
    ...measure(at(across.chain, y(from)), at(across.chain, y(to.over))),
    line("hair", [at(across.chain - 1.5, y(to.over)), at(across.basin - 1, y(to.over))]),
    ...endingAt(across.chain - 2, lettersAt, to.text),
  ];
  // the rim lies too near the ground for letters between them: they go below the ground's hatching, the depth's below them
  const rimLetters = grade + 3.6;
  const depthLetters = Math.max((y(rim.over) + bottom) / 2 - STEP / 2, rimLetters + 2 * STEP + 1);

  const water = rest ?? running;
  const basin: readonly DrawnShape[] = [
    ...(water === undefined
      ? []
      : [
          line(
            "hair",
            [
              at(across.basin, y(water.over)),
              at(across.wall, y(water.over)),
              at(across.wall, bottom),
              at(across.basin, bottom),
              at(across.basin, y(water.over)),
            ],
            "water",
          ),
        ]),
    line("outline", [at(across.basin, y(rim.over)), at(across.basin, bottom), at(across.wall, bottom), at(across.wall, y(rim.over))]),
  ];

  const bank: readonly PaperPoint[] =
    lip === undefined
      ? [at(across.end, grade)]
      : [at(across.rise - 14, grade), at(across.rise, y(lip.over) + 1.6), at(across.end, y(lip.over) + 1.6)];
  const ground: readonly DrawnShape[] = [
    line("ground", [at(across.start, grade), at(across.basin - 2, grade)]),
    line("ground", [at(across.wall + 2, grade), ...bank]),
    ...soil(across.start, across.basin - 4, grade),
    ...soil(across.wall + 2, lip === undefined ? across.end : across.rise - 14, grade),
    words(at(across.start, grade - 1), say("section.grade"), { size: 2.1 }),
  ];

  const course = y(rim.over + (floor.over - rim.over) * 0.4);
  const pipe: readonly DrawnShape[] = [
    line("buried", [
      at(across.wall, course),
      at(across.rise + 3, course),
      at(across.rise + 3, lip === undefined ? grade + 3 : y(lip.over)),
    ]),
    ...(pipeRun === undefined ? [] : dimension(at(across.wall, course + 6), at(across.rise + 3, course + 6), pipeRun)),
  ];

  const heads: readonly DrawnShape[] =
    lip === undefined
      ? []
      : [
          line("outline", [at(across.rise + 3, y(lip.over)), at(across.end - 4, y(lip.over))]),
          words(at(across.end - 4, y(lip.over) - 1), say("section.lip"), { anchor: "end", size: 2.1 }),
          line("hair", [at(across.head - 2, y(lip.over)), at(across.rise + 3, y(lip.over))]),
          ...(running === undefined
            ? []
            : [
                line("hair", [at(across.wall + 1, y(running.over)), at(across.head + 2, y(running.over))]),
                ...measure(at(across.head, y(running.over)), at(across.head, y(lip.over))),
                ...lip.text.split("\n").map((text, i) => wordsThrough(at(across.head + 2, (y(lip.over) + grade) / 2 + i * 3), text)),
              ]),
        ];

  const draws: readonly DrawnShape[] =
    intake === undefined
      ? []
      : [
          line("dimension", [at(across.basin + 4, y(intake.over)), at(across.basin + 10, y(intake.over))]),
          ...measure(at(across.basin + 7, y(intake.over)), at(across.basin + 7, bottom)),
          wordsThrough(at(across.basin + 11.5, (y(intake.over) + bottom) / 2), intake.text, { size: 2.1 }),
        ];

  return ok({
    width: WIDTH,
    height: Math.ceil(height),
    title: say("section.title"),
    says: say("section.says", { figures: says }),
    scale: say("section.scale", { scale: scaleSaid(scale, say) }),
    shapes: [
      ...basin,
      ...ground,
      ...pipe,
      ...(rest ? level(rest, "left") : []),
      ...(running ? level(running, "right") : []),
      ...draws,
      ...chain(0, rim, rimLetters),
      ...chain(rim.over, floor, depthLetters),
      ...heads,
    ],
  });
}
