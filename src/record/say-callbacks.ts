import { type CallbackClosed, type Located, type Room, type Symptom, symptoms } from "../job/index.ts";
import type { Sayer } from "./say.ts";
import { fill } from "./speaking.ts";
import type { Language } from "./when.ts";
import { type CallbackText, callbacksEn } from "./words/callbacks-en.ts";
import { callbacksEs } from "./words/callbacks-es.ts";

const electrical: Symptom = "breaker or ground fault trips";
const isForElectrician = (typed: string): boolean => typed === electrical;

/** Makes every sentence of callbacks in one language; lengths and names come from the job's own sayer. */
export function makeCallbackSayer(sayer: Sayer, language: Language) {
  const own = language === "es" ? callbacksEs : callbacksEn;
  const text = (key: CallbackText, figures: Readonly<Record<string, string>> = {}): string => fill(own[key], figures);

  /** A symptom of the list by its sentence, any other as it was typed. */
  function symptom(typed: string): string {
    const known = symptoms.find((one) => one === typed);
    return known === undefined ? typed : text(`symptom-${known}`);
  }

  function room({ kind, room: left, limit, inDoubt }: Room): string {
    const figures = { room: sayer.quantity(kind, Math.abs(left), 16), limit: sayer.quantity(kind, limit, 16) };
    return text(left < 0 ? (inDoubt ? "room-none-doubt" : "room-none") : inDoubt ? "room-doubt" : "room-left", figures);
  }

  /** Where something lies: its distances from the marks, and how deep. */
  function located({ name, ties, depth }: Located): string {
    const distances = ties.map(({ mark, value }) => text("lies-tie", { distance: sayer.quantity("length", value, 16), mark }));
    const figures = { name: sayer.words(name), ties: distances.join(", ") };
    return depth === undefined
      ? text("lies-tied", figures)
      : text("lies-deep", { ...figures, depth: sayer.quantity("length", depth.value, 16) });
  }

  return {
    text,
    symptom,
    room,
    located,
    /** What a callback came to; what it cost stands apart. */
    closed: ({ cause, confirmed, supposed, part }: CallbackClosed): readonly string[] => [
      text(confirmed ? "closed-confirmed" : "closed-supposed", { cause }),
      ...(confirmed && supposed !== undefined ? [text("closed-supposed", { cause: supposed })] : []),
      ...(part === undefined ? [] : [text("closed-part", { part })]),
    ],
    /** Who is asked first for what trips; else that the power goes off before a hand goes in. */
    caution: (typed: string): string => text(isForElectrician(typed) ? "caution-electrician" : "caution-power"),
    isForElectrician,
  };
}

export type CallbackSayer = ReturnType<typeof makeCallbackSayer>;
