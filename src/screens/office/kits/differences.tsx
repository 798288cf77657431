import { cardDifferences, type FigureAsked, type KitCard } from "../../../job/index.ts";
import type { Json } from "../../../ledger/index.ts";
import { makeSheetSayer } from "../../../record/index.ts";
import { useSpeaking } from "../../parts/speaking.ts";
import { Lines } from "../sheets/changes.tsx";
import { wordsIn } from "../words-in.ts";

/** What changed from one version of a kit card to another. */
export function CardDifferences({
  before,
  after,
  figures,
}: {
  readonly before: KitCard;
  readonly after: KitCard;
  readonly figures: readonly FigureAsked[];
}) {
  const { session } = useSpeaking();
  const sayer = makeSheetSayer(session);
  const nameOf = (key: string): string => wordsIn(figures.find(({ id }) => id === key)?.title, session.language) || key;
  const lines = cardDifferences(before as unknown as Json, after as unknown as Json).map((one) => sayer.cardDifference(one, nameOf));
  return lines.length === 0 ? <p>{sayer.text("nothing")}</p> : <Lines lines={lines} />;
}
