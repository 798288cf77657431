import { drawingScales } from "../../geometry/index.ts";
import { type Outcome, ok, refuse } from "../../outcome/index.ts";
import type { DrawingView, DrawnShape, PaperPoint } from "../model-drawn.ts";
import type { SayArithmetic } from "../say-arithmetic.ts";
import { dimension, measure } from "./dimension.ts";
import { scaleSaid, scalesFor } from "./scale-said.ts";
import { across, basinShapes, type SectionToDraw, STEP } from "./section-basin.ts";
import { at, line, words, wordsThrough } from "./strokes.ts";

const WIDTH = 172;
const TALLEST = 62;
const ABOVE = 9;
const BELOW = 9;

const soil = (from: number, to: number, y: number): readonly DrawnShape[] =>
  Array.from({ length: Math.floor((to - from) / 4) }, (_, i) => line("hair", [at(from + i * 4 + 2.2, y), at(from + i * 4 + 0.6, y + 1.6)]));

/** What two lines of letters take between the ground with its hatching and the pipe. */
const COVER_LETTERS = 8;

/**
 * Basin, water levels, ground and lip seen from the side, heights to the largest usual scale that fits; the pipe's course is a sketch.
 * Refuses heights that no scale can hold.
 */
export function sectionDrawing(section: SectionToDraw, say: SayArithmetic): Outcome<DrawingView> {
  const { rim, floor, running, cover, lip, pipeRun, units, says } = section;
  const top = Math.max(0, lip?.over ?? 0);
  const lowest = Math.min(floor.over, cover?.over ?? 0);
  const scale = drawingScales[scalesFor(units)].find(({ ratio }) => (top - lowest) * 1000 <= TALLEST * ratio);
  if (scale === undefined || !Number.isFinite(top - lowest)) return refuse("drawing-does-not-fit", "points");
  const y = (over: number): number => ABOVE + ((top - over) * 1000) / scale.ratio;
  const grade = y(0);

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

  const course = y(cover?.over ?? rim.over + (floor.over - rim.over) * 0.4);
  // two lines of letters between ground and pipe, or under the pipe where it lies too near the ground
  const roomAbove = course - grade >= COVER_LETTERS;
  const covered: readonly DrawnShape[] =
    cover === undefined
      ? []
      : [
          ...measure(at(across.cover, grade), at(across.cover, course)),
          ...cover.text
            .split("\n")
            .map((text, i) => wordsThrough(at(across.cover + 1.8, (roomAbove ? grade + 3.4 : course + 2.6) + i * STEP), text)),
        ];
  const runAt = course + (roomAbove || cover === undefined ? 6 : 12);
  const pipe: readonly DrawnShape[] = [
    line("buried", [
      at(across.wall, course),
      at(across.rise + 3, course),
      at(across.rise + 3, lip === undefined ? grade + 3 : y(lip.over)),
    ]),
    ...(pipeRun === undefined ? [] : dimension(at(across.wall, runAt), at(across.rise + 3, runAt), pipeRun)),
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
                ...lip.text.split("\n").map((text, i) => wordsThrough(at(across.head + 2, (y(lip.over) + grade) / 2 + i * STEP), text)),
              ]),
        ];

  return ok({
    width: WIDTH,
    height: Math.ceil(Math.max(y(floor.over), runAt) + BELOW),
    title: say("section.title"),
    says: say("section.says", { figures: says }),
    scale: say("section.scale", { scale: scaleSaid(scale, say) }),
    shapes: [...basinShapes(section, y), ...ground, ...pipe, ...covered, ...heads],
  });
}
