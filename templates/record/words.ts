import type { RecordModel } from "#core/record/index.ts";

/** Every fixed word that the record's templates print, by key of `RecordModel.words`. */
export const recordWordKeys = [
  "accepted",
  "accepted-by",
  "accepted-none",
  "aim",
  "as-typed",
  "caution",
  "cautions",
  "clearance",
  "conditions",
  "covered-when",
  "covering",
  "coverings",
  "ends",
  "entries",
  "entry",
  "equipment",
  "exceptions",
  "exceptions-none",
  "figures",
  "findings",
  "head",
  "how-to-check",
  "how-read",
  "issued",
  "job-number",
  "kind",
  "lasts",
  "left-to-do",
  "left-to-do-by",
  "left-to-do-none",
  "limit",
  "limit-source",
  "notes",
  "of-pages",
  "page",
  "papers",
  "part",
  "photo",
  "photo-missing",
  "photo-not-in-store",
  "photo-unreadable",
  "pictures",
  "reading",
  "rules",
  "signature",
  "standing",
  "starts",
  "state",
  "steps",
  "tolerance-sheet",
  "value",
  "verdict",
  "version",
  "warranty",
  "what",
  "when",
  "withheld",
] as const;

export type RecordWord = (typeof recordWordKeys)[number];

export type Say = (key: RecordWord) => string;

/** @throws when the model lacks a word: a bug of the dictionary, which its test finds for every language. */
export const sayFrom =
  (model: Pick<RecordModel, "words" | "language">): Say =>
  (key) => {
    const word = model.words[key];
    if (word === undefined) throw new Error(`The record's words lack '${key}' in ${model.language}.`);
    return word;
  };
