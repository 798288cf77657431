import type { SiteMark, TiedThing, TieTaken } from "../job/index.ts";
import type { Context } from "./context.ts";
import { typedText } from "./corrections-view.ts";
import { tagName } from "./tag-name.ts";

const LONGEST_LETTER = 3;

/** A distance as typed and, where that was corrected, as it counts; several readings of it one after the other. */
export const tieTyped = (context: Context, { facts }: TieTaken): string =>
  facts.map(({ what }) => typedText(context, what, false)).join(", ");

/** What something that was tied to marks is called. */
export const tiedName = (context: Context, { item, tag }: TiedThing): string =>
  tag === undefined ? context.sayer.words(item.locates ?? item.title) : tagName(context, tag);

const ownLetter = ({ name, tag }: SiteMark): string | undefined => {
  const letter = (tag?.tag ?? name.split(",")[0] ?? "").trim();
  return letter.length <= LONGEST_LETTER && letter !== "" ? letter : undefined;
};

/** The letters that the crew painted beside the marks, by name; where two are the same or one is missing, M1, M2 and so on. */
export function lettersOf(marks: readonly SiteMark[]): ReadonlyMap<string, string> {
  const own = marks.map(ownLetter);
  const isOwn = new Set(own).size === marks.length && own.every((letter) => letter !== undefined);
  return new Map(marks.map(({ name }, i) => [name, (isOwn ? own[i] : undefined) ?? `M${i + 1}`]));
}
