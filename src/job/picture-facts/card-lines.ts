import type { Live } from "../live.ts";
import type { Instance } from "../series.ts";
import type { JobState } from "../state.ts";
import { photosRead } from "./photo-read.ts";
import { contra, neither, type PictureLine, pro } from "./picture-line.ts";

/** What a card in the picture says, beside the step that the picture was put to. Whatever does not agree is a question to a person. */
export function cardLines(state: JobState, { item }: Instance, { what }: Live): readonly PictureLine[] {
  const cards = photosRead(state, "all").get(String(what.photo))?.cards ?? [];
  const [card] = cards;
  if (card === undefined) return [];
  if (cards.length > 1) return [neither("card-several", { count: String(cards.length) })];
  if (card.of === "nothing") return [neither("card-tells-nothing")];
  if (card.of === "another job") return [contra("card-other-job")];
  if (card.step === undefined) return [pro("card-job")];
  return [card.step === item.step ? pro("card-step") : contra("card-other-step", { step: card.step })];
}
