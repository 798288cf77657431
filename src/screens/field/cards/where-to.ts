import type { CardRead, Instance } from "../../../job/index.ts";
import type { Places } from "../picture/places.ts";

/** What one card in a photo says here. `job not here`: of this company, and of a job that this phone does not hold. */
export type CardSays =
  | { readonly is: "card"; readonly job: string; readonly step?: string }
  | { readonly is: "job not here" }
  | { readonly is: "nothing" };

const keyOf = (card: CardSays): string => (card.is === "card" ? `${card.job} ${card.step ?? ""}` : card.is);

/** The codes of a photo as cards, each once: the four of one card say the same. */
export function cardsSaid(codes: readonly CardRead[]): readonly CardSays[] {
  const said = new Map<string, CardSays>();
  for (const code of codes) {
    const card: CardSays =
      code.is === "card"
        ? { is: "card", job: code.job, ...(code.step === undefined ? {} : { step: code.step }) }
        : { is: code.is === "job unknown" ? "job not here" : "nothing" };
    said.set(keyOf(card), card);
  }
  return [...said.values()];
}

/** Somewhere else, as a card says. */
export interface Elsewhere {
  readonly job: string;
  /** Absent on a card for any step. */
  readonly step?: string;
}

/** What is said of a card that asks nothing. */
export type CardLine = "step" | "job" | "job not here" | "nothing";

/** What cards say beside a step. `asks`: not of this step alone; where else they say, which is none where only two cards tell nothing. */
export type BesideStep =
  | { readonly is: "no card" }
  | { readonly is: "line"; readonly line: CardLine }
  | { readonly is: "asks"; readonly several: boolean; readonly elsewhere: readonly Elsewhere[] };

/** The cards in a photo beside the step that it is about to be put to. */
export function besideStep(cards: readonly CardSays[], { job, step }: { readonly job: string; readonly step: string }): BesideStep {
  const [card, ...others] = cards;
  if (card === undefined) return { is: "no card" };
  const elsewhere = cards.flatMap((one): Elsewhere[] => {
    const isHere = one.is !== "card" || (one.job === job && (one.step === undefined || one.step === step));
    return isHere ? [] : [{ job: one.job, ...(one.step === undefined ? {} : { step: one.step }) }];
  });
  if (elsewhere.length > 0) return { is: "asks", several: others.length > 0, elsewhere };
  // several that say nothing against this step: whichever it is for, it belongs here
  const named = cards.filter((one) => one.is === "card");
  if (named.length > 0) return { is: "line", line: named.some((one) => one.step !== undefined) ? "step" : "job" };
  return { is: "line", line: card.is === "job not here" ? "job not here" : "nothing" };
}

/**
 * What cards say of a photo that waits for its place in a job. `here`: it may be put there by itself. `first`: these places come
 * first, by the steps that the cards name. `elsewhere`: other jobs that cards name; asked before anything where nothing comes first.
 */
export type WhereTo =
  | { readonly is: "as usual"; readonly line?: CardLine }
  | { readonly is: "here"; readonly step: string; readonly place: Instance }
  | {
      readonly is: "asks";
      readonly several: boolean;
      readonly steps: readonly string[];
      readonly first: readonly Instance[];
      readonly elsewhere: readonly Elsewhere[];
    };

/** A step's open places; where it has none, those to which a further picture can be added. */
function placesOf(step: string, { open, taken }: Places): readonly Instance[] {
  const of = (all: readonly Instance[]): readonly Instance[] => all.filter(({ item }) => item.step === step);
  const still = of(open);
  return still.length > 0 ? still : of(taken);
}

/** What to do with a photo of a job by the cards in it; `places`: every place that a picture of this job has. */
export function whereTo(cards: readonly CardSays[], job: string, places: Places): WhereTo {
  const [card, ...others] = cards;
  if (card === undefined) return { is: "as usual" };
  const named = cards.filter((one) => one.is === "card");
  const steps = named.flatMap((one) => (one.job === job && one.step !== undefined ? [one.step] : []));
  const elsewhere = named.flatMap((one): Elsewhere[] =>
    one.job === job ? [] : [{ job: one.job, ...(one.step === undefined ? {} : { step: one.step }) }],
  );
  const first = steps.flatMap((step) => placesOf(step, places));
  const [step] = steps;
  if (others.length === 0 && step !== undefined) {
    const open = places.open.filter(({ item }) => item.step === step);
    const [place] = open;
    if (place !== undefined && open.length === 1) return { is: "here", step, place };
  }
  if (first.length > 0 || elsewhere.length > 0) return { is: "asks", several: others.length > 0, steps, first, elsewhere };
  if (named.length > 0) return { is: "as usual", line: "job" };
  return { is: "as usual", line: card.is === "job not here" ? "job not here" : "nothing" };
}
