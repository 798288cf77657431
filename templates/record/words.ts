import type { HeadingKey, RecordModel } from "#core/record/index.ts";

/** A fixed word of the record, in its language. */
export type Say = (key: HeadingKey) => string;

/** @throws when the model lacks a word: a bug of the dictionary, which its test finds for every language. */
export const sayFrom =
  (model: Pick<RecordModel, "words" | "language">): Say =>
  (key) => {
    const word = model.words[key];
    if (word === undefined) throw new Error(`The record's words lack '${key}' in ${model.language}.`);
    return word;
  };
