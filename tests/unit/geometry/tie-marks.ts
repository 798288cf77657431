import { certain, type Uncertain, withSource } from "#core/doubt/index.ts";
import type { Mark, Tie, Vector } from "#core/geometry/index.ts";

/** Metres with a standard uncertainty of its own. */
export const taped = (name: string, value: number, u = 0.003): Uncertain => withSource(certain(value), `reading:${name}/placing`, u);

export const mark = (name: string, x: number, y: number): Mark => ({ name, x: certain(x), y: certain(y) });

/** Ties to a place as a tape without error would read them, plus what is said to be wrong at each. */
export const tiesTo = (marks: readonly Mark[], at: Vector, wrong: readonly number[] = [], u = 0.003): Tie[] =>
  marks.map(({ name, x, y }, i) => ({
    mark: name,
    distance: taped(`tie ${name}`, Math.hypot(at.x - x.value, at.y - y.value) + (wrong[i] ?? 0), u),
  }));

/** Standard normal values, the same each time: Box and Muller over the minimal generator of Park and Miller. */
export function normals(seed: number): () => number {
  let state = seed;
  const uniform = (): number => {
    state = (state * 48271) % 2147483647;
    return state / 2147483647;
  };
  return () => Math.sqrt(-2 * Math.log(uniform())) * Math.cos(2 * Math.PI * uniform());
}
