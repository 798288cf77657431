import type { Item, ToleranceSheet } from "#core/job/index.ts";
import { screenWords } from "#core/screens/parts/words/index.ts";
import type { JobScript, Said } from "#infra/demo/script.ts";
import type { Hand } from "./phone-hand.ts";

/** One job that is played on a phone. */
export interface Playing {
  readonly hand: Hand;
  readonly job: string;
  readonly sheet: ToleranceSheet;
  readonly script: JobScript;
  /** Where the pictures lie that the phone's camera takes. */
  readonly folder: string;
}

export const say = screenWords("en");

/** What a line says, in the shape that its kind has. */
export const wordsOf = <T>({ what }: Said): T => what as unknown as T;

export function itemOf({ sheet }: Playing, id: string): Item {
  const item = sheet.items.find((one) => one.id === id);
  if (item === undefined) throw new Error(`the sheet has no item ${id}`);
  return item;
}

const PATIENCE_MS = 15_000;

/** Waits until an entry is done. Whoever enters is asked once a day, over the page; the entry then goes on by itself. */
export async function done({ hand }: Playing, wait: () => Promise<unknown>): Promise<void> {
  const over = new AbortController();
  const asked = hand.page
    .waitForSelector("dialog[open] .choices button", { timeout: PATIENCE_MS, signal: over.signal })
    .then(async (button) => {
      if (button !== null) await hand.touch(button, "itself");
    })
    .catch(() => {});
  await wait();
  over.abort();
  await asked;
}
