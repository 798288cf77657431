import type { CoveredState } from "../../job/index.ts";

/** The word that says when a covering happened, as far as anybody said. */
export const coveredWord = ({ noLaterThan, beforeRecord }: CoveredState) =>
  beforeRecord ? "covered-before-record" : noLaterThan ? "covered-no-later" : "covered-at";
