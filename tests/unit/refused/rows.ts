import { certain, type Uncertain } from "#core/doubt/index.ts";
import type { Outcome } from "#core/outcome/index.ts";

/** What a figure must be, as `src/doubt/fit.ts` has it, and where a refusal says that it is not. */
export interface Figure {
  readonly value: number;
  readonly wanted: "positive" | "not negative" | "finite" | readonly [number, number];
  readonly place: string;
}

export const positive = (value: number, place: string): Figure => ({ value, wanted: "positive", place });
export const notNegative = (value: number, place: string): Figure => ({ value, wanted: "not negative", place });
export const finite = (value: number, place: string): Figure => ({ value, wanted: "finite", place });
export const within = (value: number, place: string, least: number, most: number): Figure => ({ value, wanted: [least, most], place });

export type Given = Readonly<Record<string, Uncertain>>;

/** Every figure that a function takes, and the call with them. A figure that the call reads as a plain number it takes from `.value`. */
export interface Refusing {
  readonly kind: "refuses";
  readonly figures: Readonly<Record<string, Figure>>;
  readonly call: (of: (name: string) => Uncertain, plain: (name: string) => number) => Outcome<unknown>;
}
/** No refusal: what is no number goes in and comes out, and whoever takes it refuses it. `call` of one number that is not one. */
export interface Carrying {
  readonly kind: "carries";
  readonly call: (odd: number) => readonly (number | Uncertain)[];
}
/** Takes no number, or is for solving with figures that its caller has looked at. */
export interface Exempt {
  readonly kind: "exempt";
  readonly because: string;
}
export type Row = Refusing | Carrying | Exempt;
export type Rows = Readonly<Record<string, Row>>;

export const refuses = <Name extends string>(
  figures: Readonly<Record<Name, Figure>>,
  call: (of: Readonly<Record<Name, Uncertain>>, plain: Readonly<Record<Name, number>>) => Outcome<unknown>,
): Refusing => ({
  kind: "refuses",
  figures,
  call: (of, plain) => {
    const names = Object.keys(figures) as Name[];
    const lazy = <T>(read: (name: string) => T): Record<Name, T> =>
      Object.defineProperties(
        {} as Record<Name, T>,
        Object.fromEntries(names.map((name) => [name, { get: () => read(name), enumerable: true }])),
      );
    return call(lazy(of), lazy(plain));
  },
});
export const carries = (call: Carrying["call"]): Carrying => ({ kind: "carries", call });
export const exempt = (because: string): Exempt => ({ kind: "exempt", because });

/** Figures under one place: `{ width: positive(…) }` under `basin` is `basin/width`. */
export const under = <Name extends string>(
  place: string,
  wanted: Readonly<Record<Name, readonly [value: number, wanted: Figure["wanted"]]>>,
): Record<Name, Figure> =>
  Object.fromEntries(
    (Object.entries(wanted) as [Name, readonly [number, Figure["wanted"]]][]).map(([name, [value, what]]) => [
      name,
      { value, wanted: what, place: `${place}/${name}` },
    ]),
  ) as Record<Name, Figure>;

export const parts = (of: Uncertain): readonly number[] => [of.value, ...of.parts.values()];
export { certain };
