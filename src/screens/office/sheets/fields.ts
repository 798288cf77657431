import { setOutPlaces } from "../../../geometry/index.ts";
import {
  checkCosts,
  checkFunctions,
  checkShows,
  drawnAs,
  jobMoments,
  leakTests,
  nightMatters,
  passedBefore,
  type SheetList,
  symptoms,
} from "../../../job/index.ts";
import { fixedUnits, type QuantityKind } from "../../../units/index.ts";
import type { Thing } from "./draft.ts";

/** What can be chosen: things of another list by their names, or words of one of the sheet's closed lists. */
export type Options = { readonly list: SheetList; readonly also?: readonly string[] } | { readonly words: readonly string[] };

/** How one field of a thing is typed. */
export type Form =
  | { readonly as: "words" | "text" | "whole" | "yes" | "unit" | "limit" | "answers" | "groups" | "asks" | "looks" | "switches" }
  | { readonly as: "quantity"; readonly kind: QuantityKind }
  | { readonly as: "one"; readonly of: Options; readonly always?: boolean }
  | { readonly as: "many"; readonly of: Options };

export interface FieldOf {
  readonly name: string;
  readonly form: Form;
  /** Absent: always shown. */
  readonly when?: (thing: Thing) => boolean;
  /** Seldom changed: folded away. */
  readonly further?: boolean;
}

const further = (fields: readonly FieldOf[]): readonly FieldOf[] => fields.map((field) => ({ ...field, further: true }));

const words: Form = { as: "words" };
const text: Form = { as: "text" };
const yes: Form = { as: "yes" };
const from = (list: SheetList, also?: readonly string[]): Form => ({ as: "one", of: { list, ...(also ? { also } : {}) } });
const many = (list: SheetList): Form => ({ as: "many", of: { list } });
const among = (list: readonly string[], always = false): Form => ({ as: "one", of: { words: list }, always });
const size: Form = { as: "quantity", kind: "length" };

const isReading = ({ kind }: Thing): boolean => kind === "reading";
const isAnswer = ({ kind }: Thing): boolean => kind === "answer";
const does =
  (...functions: readonly string[]) =>
  ({ function: name }: Thing): boolean =>
    functions.includes(String(name));

const kinds = Object.keys(fixedUnits);
const title: FieldOf = { name: "title", form: words };
const cautions: FieldOf = { name: "cautions", form: many("cautions") };
const step: FieldOf = { name: "step", form: { as: "one", of: { list: "steps" }, always: true } };

const weighted: readonly FieldOf[] = [
  { name: "weight", form: among(["holds", "asked", "if you have it", "open"], true) },
  { name: "holds", form: from("coverings", ["by tag"]), when: ({ weight, holds }) => weight === "holds" || holds !== undefined },
];
const weightedMore: readonly FieldOf[] = [
  { name: "switches", form: { as: "switches" } },
  { name: "source", form: text },
  { name: "customerAccepts", form: yes },
];

const items: readonly FieldOf[] = [
  title,
  { name: "prompt", form: words },
  { name: "kind", form: among(["picture", "reading", "answer"], true) },
  step,
  ...weighted,
  { name: "quantity", form: among(kinds), when: isReading },
  { name: "unit", form: { as: "unit" }, when: isReading },
  { name: "instrument", form: from("instruments"), when: isReading },
  { name: "placing", form: from("placings"), when: isReading },
  { name: "placingAlso", form: from("placings"), when: isReading },
  { name: "choices", form: { as: "answers" }, when: isAnswer },
  { name: "tags", form: from("tagSets") },
  { name: "whenNoTagOf", form: from("tagSets"), when: isAnswer },
  cautions,
  ...further([
    { name: "needsHidden", form: from("coverings") },
    ...weightedMore,
    { name: "mayNotApply", form: yes },
    { name: "apart", form: yes },
    { name: "signed", form: yes, when: isReading },
    { name: "inSetUp", form: yes, when: isReading },
    { name: "heightMark", form: yes, when: isReading },
    { name: "fromMark", form: yes, when: isReading },
    { name: "locates", form: words, when: ({ fromMark }) => fromMark === true },
    { name: "drawnAs", form: among(drawnAs), when: ({ fromMark }) => fromMark === true },
    { name: "buriedDepth", form: yes, when: isReading },
    { name: "onOnePlane", form: yes, when: isReading },
    { name: "setOut", form: among([...setOutPlaces, "finished grade"]), when: isReading },
    { name: "marks", form: among(jobMoments) },
    { name: "tonight", form: among(nightMatters) },
  ]),
];

const checks: readonly FieldOf[] = [
  title,
  step,
  { name: "function", form: among(checkFunctions, true) },
  { name: "items", form: many("items") },
  { name: "minus", form: many("items"), when: does("single value", "moved since", "short of the socket") },
  { name: "kind", form: among(kinds, true) },
  { name: "aim", form: { as: "limit" } },
  { name: "lower", form: { as: "limit" } },
  { name: "upper", form: { as: "limit" } },
  { name: "rule", form: among(["guarded", "simple acceptance"]) },
  ...weighted,
  { name: "way", form: among(["along", "across"]), when: does("out of level") },
  { name: "places", form: among(["corners", "quarter points"]), when: does("out of level", "fourth place") },
  { name: "until", form: from("items"), when: does("time passed since") },
  { name: "before", form: among(passedBefore), when: does("time passed since") },
  { name: "begins", form: from("steps"), when: does("between two instants") },
  { name: "apart", form: { as: "quantity", kind: "duration" }, when: does("steady") },
  { name: "leak", form: among(leakTests), when: does("loss a day") },
  { name: "bucket", form: many("items"), when: does("loss a day") },
  { name: "conditions", form: many("items"), when: does("loss a day", "room for rain") },
  ...further([
    ...weightedMore,
    { name: "stock", form: size, when: ({ kind }) => kind === "length" },
    { name: "costs", form: among(checkCosts) },
    { name: "asks", form: among(["electrician"]) },
    { name: "shows", form: among(checkShows) },
    { name: "reason", form: words },
  ]),
];

/** The fields of each list's things in the order in which they are typed. What is not named here is changed in the file only. */
export const fieldsOf: Readonly<Record<SheetList, readonly FieldOf[]>> = {
  steps: [
    title,
    { name: "number", form: { as: "whole" } },
    { name: "note", form: words },
    cautions,
    { name: "office", form: yes },
    { name: "signed", form: yes },
  ],
  items,
  checks,
  oneOf: [
    title,
    step,
    { name: "holds", form: { as: "one", of: { list: "coverings" }, always: true } },
    { name: "groups", form: { as: "groups" } },
  ],
  coverings: [title, { name: "done", form: words }, { name: "leavesOpen", form: words }, cautions],
  cautions: [{ name: "text", form: words }],
  beforehand: [title, { name: "steps", form: many("steps") }],
  tagSets: [title, { name: "least", form: { as: "whole" } }, { name: "coverings", form: many("coverings") }],
  switches: [title, { name: "standard", form: { as: "one", of: { words: ["true", "false"] }, always: true } }],
  figures: [
    title,
    { name: "kind", form: among([...kinds, "text"], true) },
    { name: "unit", form: text, when: ({ kind }) => kind !== "text" },
    { name: "from", form: among(["design", "kit card"], true) },
  ],
  instruments: [
    title,
    { name: "resolution", form: size },
    { name: "permittedError", form: size },
    { name: "exact", form: yes },
    { name: "line", form: among(["laser", "string with line level", "spirit level"]) },
    { name: "receiver", form: among(["fine", "coarse"]) },
    { name: "turnedEndForEnd", form: yes },
  ],
  placings: [title, { name: "halfWidth", form: size }],
  callbacks: [
    { name: "symptom", form: among(symptoms, true) },
    cautions,
    { name: "ask", form: { as: "asks" } },
    { name: "look", form: { as: "looks" } },
  ],
};
