import type { Typed } from "../fact.ts";
import type { FigureSource, KitCard } from "../figures.ts";
import { designLines } from "./design-check.ts";
import { type Stated, statedBy } from "./stated.ts";
import type { DesignSwitches } from "./switches.ts";
import { designFigures, type FigureKey } from "./vocabulary.ts";

/** A figure that the design check rests on, as it was typed, and where it was found. */
export interface FigureUsed {
  readonly key: FigureKey;
  readonly fact: Typed | string;
  /** Absent where the design says it. */
  readonly card?: KitCard;
}

/** The same figures; what is asked of them is noted. */
const noting = (stated: Stated, asked: Set<FigureKey>): Stated => ({
  number: (key) => {
    asked.add(key);
    return stated.number(key);
  },
  text: (key) => {
    asked.add(key);
    return stated.text(key);
  },
  instead: (figures) => noting(stated.instead(figures), asked),
  without: (key) => noting(stated.without(key), asked),
});

function found({ design, kitCards }: FigureSource, key: FigureKey): FigureUsed | undefined {
  const own = Object.hasOwn(design.figures, key) ? design.figures[key] : undefined;
  if (own !== undefined) return { key, fact: own };
  const card = kitCards.find(({ facts }) => Object.hasOwn(facts, key));
  const fact = card?.facts[key];
  return card === undefined || fact === undefined ? undefined : { key, fact, card };
}

/**
 * The figures of design and kit cards that the design check asks for and finds, in the order of the vocabulary; one that is named
 * as unknown is none. A figure of the design stands before that of a card, as in the check.
 */
export function figuresUsed(source: FigureSource, switches: DesignSwitches): readonly FigureUsed[] {
  const asked = new Set<FigureKey>();
  designLines(noting(statedBy(source), asked), switches);
  return (Object.keys(designFigures) as FigureKey[]).flatMap((key) => {
    const figure = asked.has(key) ? found(source, key) : undefined;
    return figure === undefined || figure.fact === "unknown" ? [] : [figure];
  });
}
