import { coversOf, dayAt, isAfter, type WarrantyClocks, type WarrantyTerms, warrantyPlan } from "../warranty/index.ts";
import { makeWarrantySayer } from "./say-warranty.ts";
import { fill } from "./speaking.ts";
import type { Language } from "./when.ts";
import { type MessageText, messagesEn } from "./words/messages-en.ts";
import { messagesEs } from "./words/messages-es.ts";

/** What is written about: a record that is released, a paper that is asked for, or the days of a warranty. */
export type MessageAbout =
  | { readonly kind: "released"; readonly link: string }
  | { readonly kind: "others"; readonly link: string; readonly what: string }
  | { readonly kind: "warranty"; readonly clocks: WarrantyClocks; readonly terms: WarrantyTerms };

export interface MessageInput {
  readonly about: MessageAbout;
  /** Of the one who reads it. */
  readonly language: Language;
  readonly job: string;
  /** Of the one who reads it. */
  readonly name?: string | undefined;
  /** Name of the company and what stands under it. */
  readonly company: { readonly name: string; readonly lines: readonly string[] };
  /** When it is made, milliseconds. */
  readonly at: number;
}

/** Days that are still to come, the nearest first: services, what is to be registered, last days of cover. */
function daysToCome({ clocks, terms }: Extract<MessageAbout, { kind: "warranty" }>, language: Language, at: number): readonly string[] {
  const say = makeWarrantySayer(language);
  const today = dayAt(at, clocks.zone);
  const { services, registrations, ends } = warrantyPlan(clocks, terms, coversOf(clocks, terms), today);
  const job = "";
  const lines = [
    ...services.map(({ kind, day }) => ({ day, says: say.serviceName(kind) })),
    ...registrations.map(({ part, by, with: whom }) => ({ day: by, says: say.text("calendar-register", { part, whom, job }) })),
    ...ends.map(({ part, day }) => ({ day, says: say.text("calendar-ends", { part, job }) })),
  ];
  return lines
    .filter(({ day }) => !isAfter(today, day))
    .sort((a, b) => (isAfter(a.day, b.day) ? 1 : isAfter(b.day, a.day) ? -1 : 0))
    .map(({ day, says }) => `- ${say.day(day)}: ${says.replace(/[\s,:;·]+$/u, "")}`);
}

/** A message's subject and words, in the language of the one who reads it. */
export function messageText({ about, language, job, name, company, at }: MessageInput): {
  readonly subject: string;
  readonly text: string;
} {
  const own = language === "es" ? messagesEs : messagesEn;
  const day = about.kind === "warranty" ? makeWarrantySayer(language).day(dayAt(at, about.clocks.zone)) : "";
  const figures = { job, day, name: name ?? "", what: about.kind === "others" ? about.what : "" };
  const say = (key: MessageText): string => fill(own[key], figures);
  const body = (): readonly string[] => {
    if (about.kind === "released") return [say("released-1"), say("released-2"), about.link, say("released-3")];
    if (about.kind === "others") return [say("others-1"), say("others-2"), about.link];
    const days = daysToCome(about, language, at);
    return days.length === 0 ? [say("warranty-none")] : [say("warranty-1"), days.join("\n"), say("warranty-2")];
  };
  const paragraphs = [say(name === undefined ? "greeting" : "greeting-named"), ...body(), [company.name, ...company.lines].join("\n")];
  return { subject: say(`${about.kind}-subject`), text: `${paragraphs.join("\n\n")}\n` };
}
