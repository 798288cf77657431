import type { Asking } from "./question.ts";

/** What is asked where nobody says otherwise. Five in a hundred is common practice, no source. */
export const usualAsking = (today: string): Asking => ({ today, persons: false, alpha: 0.05 });
