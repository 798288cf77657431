import { dayAt, type WarrantyClocks, type WarrantyTerms } from "../warranty/index.ts";
import { daysToCome } from "./days-to-come.ts";
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

/** A message's subject and words, in the language of the one who reads it. */
export function messageText({ about, language, job, name, company, at }: MessageInput): {
  readonly subject: string;
  readonly text: string;
} {
  const own = language === "es" ? messagesEs : messagesEn;
  const sayer = makeWarrantySayer(language);
  const day = about.kind === "warranty" ? sayer.day(dayAt(at, about.clocks.zone)) : "";
  const figures = { job, day, name: name ?? "", what: about.kind === "others" ? about.what : "" };
  const say = (key: MessageText): string => fill(own[key], figures);
  const body = (): readonly string[] => {
    if (about.kind === "released") return [say("released-1"), say("released-2"), about.link, say("released-3")];
    if (about.kind === "others") return [say("others-1"), say("others-2"), about.link];
    const days = daysToCome(about.clocks, about.terms, language, "", at).map((one) => `- ${sayer.day(one.day)}: ${one.says}`);
    return days.length === 0 ? [say("warranty-none")] : [say("warranty-1"), days.join("\n"), say("warranty-2")];
  };
  const paragraphs = [say(name === undefined ? "greeting" : "greeting-named"), ...body(), [company.name, ...company.lines].join("\n")];
  return { subject: say(`${about.kind}-subject`), text: `${paragraphs.join("\n\n")}\n` };
}
