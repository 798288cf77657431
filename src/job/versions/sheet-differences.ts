import type { Json } from "../../ledger/index.ts";
import type { QuantityKind } from "../../units/index.ts";
import type { ToleranceSheet } from "../sheet.ts";
import type { Words } from "../words.ts";
import { leafChanges } from "./differences.ts";

/** The lists of a tolerance sheet, in the order in which what changed is told. */
export const sheetLists = [
  "steps",
  "items",
  "checks",
  "oneOf",
  "coverings",
  "cautions",
  "beforehand",
  "tagSets",
  "switches",
  "figures",
  "instruments",
  "placings",
  "callbacks",
] as const;
export type SheetList = (typeof sheetLists)[number];

/** One line of what changed from one version of a tolerance sheet to another. `list` absent: of the sheet itself. */
export interface SheetDifference {
  readonly list?: SheetList;
  /** Of the thing, in its list; empty for the sheet itself and for a list's order. */
  readonly id: string;
  /** As the later version words it; of what is gone, as the earlier one did. */
  readonly title?: Words;
  readonly change: "came" | "gone" | "changed" | "order";
  /** Where in the thing, `title/en`; of what changed only. */
  readonly path?: string;
  readonly before?: Json;
  readonly after?: Json;
  /** In whose fixed unit numbers at `path` stand. */
  readonly kind?: QuantityKind;
}

type Thing = { readonly [name: string]: Json };

const nameOf = (thing: Thing): string => String(thing.id ?? thing.symptom ?? "");
const titleOf = (thing: Thing): Words | undefined => (thing.title ?? thing.text) as unknown as Words | undefined;
const listIn = (sheet: ToleranceSheet, list: SheetList): readonly Thing[] => (sheet[list] ?? []) as unknown as readonly Thing[];

/** Fields of lengths, in micrometres, outside the checks. */
const lengths: ReadonlySet<string> = new Set(["permittedError", "resolution", "halfWidth", "wins/lower", "wins/upper", "stock"]);

function kindAt(thing: Thing, path: string): QuantityKind | undefined {
  if (lengths.has(path)) return "length";
  if (path === "apart" && typeof thing.apart === "number") return "duration";
  return ["aim", "lower", "upper"].includes(path) ? (thing.kind as unknown as QuantityKind | undefined) : undefined;
}

function changesOf(list: SheetList | undefined, was: Thing, is: Thing): readonly SheetDifference[] {
  const title = titleOf(is);
  return leafChanges(was, is).map(({ path, before, after }) => {
    const kind = kindAt(is, path);
    return {
      ...(list === undefined ? {} : { list }),
      id: list === undefined ? "" : nameOf(is),
      ...(title === undefined ? {} : { title }),
      change: "changed",
      path,
      ...(before === undefined ? {} : { before }),
      ...(after === undefined ? {} : { after }),
      ...(kind === undefined ? {} : { kind }),
    };
  });
}

function listDifferences(list: SheetList, before: readonly Thing[], after: readonly Thing[]): readonly SheetDifference[] {
  const was = new Map(before.map((thing) => [nameOf(thing), thing]));
  const is = new Map(after.map((thing) => [nameOf(thing), thing]));
  const one = (thing: Thing, change: "came" | "gone"): SheetDifference => {
    const title = titleOf(thing);
    return { list, id: nameOf(thing), ...(title === undefined ? {} : { title }), change };
  };
  const stayed = (things: readonly Thing[], other: ReadonlyMap<string, Thing>): string =>
    things
      .map(nameOf)
      .filter((name) => other.has(name))
      .join("\n");
  return [
    ...after.flatMap((thing) => {
      const earlier = was.get(nameOf(thing));
      return earlier === undefined ? [one(thing, "came")] : changesOf(list, earlier, thing);
    }),
    ...before.filter((thing) => !is.has(nameOf(thing))).map((thing) => one(thing, "gone")),
    ...(stayed(before, is) === stayed(after, was) ? [] : [{ list, id: "", change: "order" } as const]),
  ];
}

/** The sheet without its lists and without its number, which every version has of its own. */
function itself(sheet: ToleranceSheet): Thing {
  const lists: ReadonlySet<string> = new Set([...sheetLists, "version", "format", "id"]);
  return Object.fromEntries(Object.entries(sheet as unknown as Thing).filter(([name]) => !lists.has(name)));
}

/** What changed from one version of a tolerance sheet to another: of the sheet itself, then list by list. None: the same but for its number. */
export const sheetDifferences = (before: ToleranceSheet, after: ToleranceSheet): readonly SheetDifference[] => [
  ...changesOf(undefined, itself(before), itself(after)),
  ...sheetLists.flatMap((list) => listDifferences(list, listIn(before, list), listIn(after, list))),
];

/** What changed from one version of a kit card to another: part, facts, notes and source, each by its path. */
export const cardDifferences = (before: Json, after: Json): ReturnType<typeof leafChanges> => leafChanges(before, after);
