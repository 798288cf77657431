import type { DesignLine, DesignMessage, DesignQuestion, DesignState } from "./design-line.ts";
import { type Said, said } from "./design-message.ts";
import type { Known } from "./known.ts";

/** What one question comes to. */
export interface Answered {
  readonly state: DesignState;
  readonly says: DesignMessage;
  readonly advice?: readonly DesignMessage[];
  readonly caution?: string;
}

export const slug = (state: string): string => state.replaceAll(" ", "-");

export function lineOf(id: DesignQuestion, answer: Known<Answered>, meanwhile?: DesignMessage): DesignLine {
  const assumes = answer.assumes.length === 0 ? {} : { assumes: answer.assumes };
  if (answer.known) return { id, advice: [], ...answer.value, ...assumes };
  const needs = answer.needs.length === 0 ? {} : { needs: answer.needs };
  const refusal = answer.refusal ? { refusal: answer.refusal } : {};
  return { id, state: "not known", says: meanwhile ?? said("design.not-known"), advice: [], ...needs, ...assumes, ...refusal };
}

/** A line that compares: its sentence by its state, and what to change where it is not surely enough. */
export function compared(
  id: DesignQuestion,
  state: DesignState,
  figures: Readonly<Record<string, Said>>,
  advice: () => readonly DesignMessage[],
): Answered {
  return { state, says: said(`design.${id}.${slug(state)}`, figures), advice: state === "enough" ? [] : advice() };
}
