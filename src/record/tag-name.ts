import type { Tag } from "../job/index.ts";
import type { Context } from "./context.ts";
import { fill } from "./speaking.ts";

/** 'Crossing 1: water line to the tap': a tag with its set's name and what it is, where that was said. */
export function tagName({ sheet, sayer, texts }: Context, { set: id, tag, description }: Omit<Tag, "hiddenBy">): string {
  const set = sayer.words(sheet.tagSets.find((one) => one.id === id)?.title);
  return description === undefined ? fill(texts("tag-bare"), { set, tag }) : fill(texts("tag-is"), { set, tag, description });
}
