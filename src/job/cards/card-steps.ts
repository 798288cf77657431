import type { ToleranceSheet } from "../sheet.ts";

type Step = ToleranceSheet["steps"][number];

/** The steps of a tolerance sheet that ask for a picture, in its order: each has a card. */
export const cardSteps = ({ steps, items }: ToleranceSheet): readonly Step[] =>
  steps.filter(({ id }) => items.some(({ kind, step }) => kind === "picture" && step === id));
