import { createContext } from "preact";
import { useContext } from "preact/hooks";
import { type RefusalCode, refusalCodes } from "../../outcome/index.ts";
import { makeSayer, momentText } from "../../record/index.ts";
import type { SessionView, WireProblem } from "../../wire/index.ts";
import { type Say, screenWords } from "./words/index.ts";

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

/** A refusal of the edge as a sentence of this app's language; what the edge said itself, where the code is not known here. */
export function refusalText(problem: WireProblem, { language, units }: Pick<SessionView, "language" | "units">): string {
  const { code, place, column, figures, detail } = problem;
  if (!(refusalCodes as readonly string[]).includes(code)) return detail;
  return makeSayer({ language, units, zone: "UTC" }).refusal({
    code: code as RefusalCode,
    place,
    figures,
    ...(column === undefined ? {} : { column }),
  });
}

/** A day and time where the reader is: a list holds jobs of several zones. */
export const momentHere = (milliseconds: number, language: "en" | "es"): string =>
  momentText(milliseconds, new Intl.DateTimeFormat().resolvedOptions().timeZone, language);

/** A moment of the phone's own clock, to the second. */
export const clockText = (milliseconds: number, language: string): string =>
  new Intl.DateTimeFormat(language, { hour: "numeric", minute: "2-digit", second: "2-digit", hourCycle: "h23" }).format(milliseconds);
