import type { DrawnShape } from "../model-drawn.ts";
import { measure } from "./dimension.ts";
import type { Units } from "./scale-said.ts";
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
  /** Top of the pipe where it lies shallowest. */
  readonly cover?: Height;
  /** The lip, with the static head's words: from the running water up to it. */
  readonly lip?: Height;
  readonly pipeRun?: string;
  /** The figures in one sentence, for whoever cannot see the drawing. */
  readonly says: string;
  readonly units: Units;
}

/** Where things stand across the paper: nothing of it is to scale. */
export const across = { start: 2, chain: 42, basin: 49, wall: 105, head: 110.5, cover: 119, rise: 146, end: 170 } as const;

/** From one line of letters to the next, millimetres. */
export const STEP = 3;

/** Words on their lines, the first one's middle at `top`, ending at `x`. */
const endingAt = (x: number, top: number, text: string): readonly DrawnShape[] =>
  text.split("\n").map((one, i) => wordsThrough(at(x, top + i * STEP), one, { anchor: "end" }));

/** The basin with its water, its heights to the left of it. `y`: metres over finished grade to millimetres of paper. */
export function basinShapes({ rim, floor, rest, running, intake }: SectionToDraw, y: (over: number) => number): readonly DrawnShape[] {
  const grade = y(0);
  const bottom = y(floor.over);

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

  const draws: readonly DrawnShape[] =
    intake === undefined
      ? []
      : [
          line("dimension", [at(across.basin + 4, y(intake.over)), at(across.basin + 10, y(intake.over))]),
          ...measure(at(across.basin + 7, y(intake.over)), at(across.basin + 7, bottom)),
          wordsThrough(at(across.basin + 11.5, (y(intake.over) + bottom) / 2 - 0.4), intake.text, { size: 2.1 }),
        ];

  return [
    ...basin,
    ...(rest ? level(rest, "left") : []),
    ...(running ? level(running, "right") : []),
    ...draws,
    ...chain(0, rim, rimLetters),
    ...chain(rim.over, floor, depthLetters),
  ];
}
