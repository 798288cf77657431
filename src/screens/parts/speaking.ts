import { createContext } from "preact";
import { useContext } from "preact/hooks";
import { dayText, momentText, typedDay } from "../../record/index.ts";
import type { SessionView } from "../../wire/index.ts";
import { type Say, screenWords } from "./words/index.ts";

export { refusalText } from "./refusal-text.ts";

/** What every part of a page needs to speak: who looks, in which language, and how to get elsewhere. */
export interface Speaking {
  readonly session: SessionView;
  readonly say: Say;
  /** Opens another place of the app. */
  readonly go: (path: string) => void;
  /** Somebody moved inside the app: the next page takes the focus. */
  readonly moved: boolean;
  readonly signOut: () => void;
}

/** Whoever is not signed in. */
export const nobody: SessionView = { company: "", person: "", name: "", role: "crew", units: "inch", language: "en", companyName: "" };

export const SpeakingContext = createContext<Speaking>({
  session: nobody,
  say: screenWords("en"),
  go: () => {},
  moved: false,
  signOut: () => {},
});

export const useSpeaking = (): Speaking => useContext(SpeakingContext);

/** A day and time where the reader is: a list holds jobs of several zones. */
export const momentHere = (milliseconds: number, language: "en" | "es"): string =>
  momentText(milliseconds, new Intl.DateTimeFormat().resolvedOptions().timeZone, language);

/** A day of the calendar, 'YYYY-MM-DD', in words; whatever else was typed stays as it is. */
export function dayInWords(typed: string, language: "en" | "es"): string {
  const day = typedDay(typed);
  return day === undefined ? typed : dayText(day, language);
}

const clocks = new Map<string, Intl.DateTimeFormat>();

/** A moment of the phone's own clock, to the second. */
export function clockText(milliseconds: number, language: string): string {
  const options = { hour: "numeric", minute: "2-digit", second: "2-digit", hourCycle: "h23" } as const;
  const clock = clocks.get(language) ?? new Intl.DateTimeFormat(language, options);
  clocks.set(language, clock);
  return clock.format(milliseconds);
}
