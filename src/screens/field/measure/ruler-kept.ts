import { cardLayout, printScale, type Typed } from "../../../job/index.ts";
import type { Outcome } from "../../../outcome/index.ts";
import type { CardPaper } from "../../../photo/index.ts";
import type { Keep } from "../keep/index.ts";

/** What a tape said beside the ruler of the cards on a paper: one printer prints them all alike, as far as this phone knows. */
const place = (paper: CardPaper): string => `card ruler ${paper}`;

export const keptRuler = (keep: Keep, paper: CardPaper): Promise<Typed | undefined> => keep.draft<Typed>(place(paper));
export const keepRuler = (keep: Keep, paper: CardPaper, ruler: Typed): Promise<void> => keep.keepDraft(place(paper), { ...ruler });

/** How long the ruler is drawn, micrometres. */
export const drawnRuler = (paper: CardPaper): number => cardLayout(paper).ruler.length;

/** Own: a print known no better than this, millionths, was read without the tape's marks: `10` for `10 0/16`. */
const COARSE = 5000;

/** What was typed, where it is a length and that ruler's, and read to the tape's marks; `coarse` where it was not. */
export function rulerTyped(paper: CardPaper, typed: string, unit: string): Outcome<Typed> | "coarse" {
  const scale = printScale(paper, { typed, unit });
  if (!scale.ok) return scale;
  return scale.value.within > COARSE ? "coarse" : { ok: true, value: { typed, unit } };
}
