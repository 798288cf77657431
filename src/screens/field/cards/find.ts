import { Beside } from "../beside.ts";
import address from "./find-worker.ts?worker&url";
import type { CardsLooked, CardsSeen } from "./seen.ts";

export type { CardsSeen, CodeSeen } from "./seen.ts";

/** Apart from the script that judges, which must stay quick. */
const finder = new Beside<CardsLooked>({
  address,
  policy: "asburied-cards",
  failed: (number) => ({ number, cards: { is: "not looked" } }),
});

/** Looks for codes of cards in a photo, beside the page and one photo at a time, by what lies on this phone alone. Never rejects. */
export async function findCards(photo: Blob): Promise<CardsSeen> {
  return (await finder.ask(photo)).cards;
}
