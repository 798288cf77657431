import type { Refusal } from "../../outcome/index.ts";
import type { QuantityKind } from "../../units/index.ts";
import type { Message } from "../finding.ts";
import type { FigureKey } from "./vocabulary.ts";

export const designQuestions = ["flow", "velocity", "reserve", "cord", "float", "stone"] as const;
export type DesignQuestion = (typeof designQuestions)[number];

export const designStates = ["enough", "not enough", "too close to call", "not known", "ask the maker", "ask the electrician"] as const;
export type DesignState = (typeof designStates)[number];

/** A message whose numbers are integers in the fixed unit of the kind that `kinds` gives them by name. */
export interface DesignMessage extends Message {
  readonly kinds: Readonly<Record<string, QuantityKind>>;
}

/** One question before the dig, its answer, and what to change and by how much where it is not enough. */
export interface DesignLine {
  readonly id: DesignQuestion;
  readonly state: DesignState;
  readonly says: DesignMessage;
  /** Worked out anew for this design; empty where nothing need change or nothing is known. */
  readonly advice: readonly DesignMessage[];
  readonly needs?: readonly FigureKey[];
  readonly assumes?: readonly FigureKey[];
  readonly caution?: string;
  readonly refusal?: Refusal;
}
