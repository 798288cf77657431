import type { LeafChange, LimitFigure, LimitStanding, SheetDifference, ToleranceSheet } from "../job/index.ts";
import { sheetLists } from "../job/index.ts";
import type { Json } from "../ledger/index.ts";
import { formatQuantity, type QuantityKind } from "../units/index.ts";
import { doubtText } from "./figures-text.ts";
import { fill, type Speaking } from "./speaking.ts";
import { type SheetText, sheetEn } from "./words/sheet-en.ts";
import { sheetEs } from "./words/sheet-es.ts";

const dictionaries = { en: sheetEn, es: sheetEs } as const;

/** A limit is typed and read back to the finest marks of a tape. */
const MARKS = 64;

interface Worded {
  readonly en: string;
  readonly es?: string;
}

/** Every id of the sheets with the words that stand for it; of a later sheet before those of an earlier one. */
function namesIn(sheets: readonly ToleranceSheet[]): ReadonlyMap<string, Worded> {
  const named = sheets.flatMap((sheet) =>
    sheetLists.flatMap((list) =>
      ((sheet[list] ?? []) as unknown as readonly { readonly id?: string; readonly title?: Worded; readonly text?: Worded }[]).flatMap(
        ({ id, title = undefined, text }) =>
          id === undefined || (title ?? text) === undefined ? [] : [[id, (title ?? text) as Worded] as const],
      ),
    ),
  );
  return new Map(named.reverse());
}

/** Says a tolerance sheet's own parts, and what changed from one version to another, in one language and one company's units. */
export function makeSheetSayer({ language, units: lengths }: Pick<Speaking, "language" | "units">, sheets: readonly ToleranceSheet[] = []) {
  const texts: Readonly<Record<SheetText, string>> = dictionaries[language];
  const names = namesIn(sheets);
  const known = (key: string): string | undefined => (Object.hasOwn(texts, key) ? texts[key as SheetText] : undefined);
  const words = (of: Worded | undefined): string => of?.[language] ?? of?.en ?? "";

  /** A word out of one of the sheet's closed lists. */
  const value = (of: string): string => known(`value.${of}`) ?? of;
  const quantity = (kind: QuantityKind, of: number): string => formatQuantity(kind, of, { lengths, marks: MARKS });

  /** What a field is called; inside an answer or a way, by what it says of it. */
  function field(path: string): string {
    const pieces = path.split("/");
    const last = pieces.at(-1) ?? "";
    const language = ["en", "es", "inch", "metric"].includes(last) ? known(`field.${last}`) : undefined;
    const own = language === undefined ? pieces : pieces.slice(0, -1);
    const name = known(`field.${own.slice(-2).join("/")}`) ?? known(`field.${own.at(-1) ?? ""}`) ?? own.join("/");
    return language === undefined ? name : `${name} (${language})`;
  }

  function limit(of: LimitFigure, kind: QuantityKind): string {
    if (typeof of === "number") return quantity(kind, of);
    const named = [value(of.function), of.figure ?? of.item].filter((part) => part !== undefined);
    const [first = "", second] = named;
    const own = second === undefined ? first : `${first}: ${words(names.get(second)) || second}`;
    if (of.offset === undefined || of.offset === 0) return own;
    return fill(texts[of.offset < 0 ? "less" : "more"], { figure: own, offset: quantity(kind, Math.abs(of.offset)) });
  }

  function shown(of: Json, kind: QuantityKind | undefined): string {
    if (typeof of === "boolean") return texts[of ? "yes" : "no"];
    if (typeof of === "number") return kind === undefined ? String(of) : quantity(kind, of);
    if (typeof of === "string") return words(names.get(of)) || known(`value.${of}`) || `“${of}”`;
    if (Array.isArray(of)) return of.length === 0 ? texts.none : of.map((one) => shown(one as Json, kind)).join(", ");
    if (of === null) return texts.none;
    if ("typed" in of) return `${String(of.typed)} ${String((of as { unit?: Json }).unit ?? "")}`.trim();
    if ("function" in of) return limit(of as unknown as LimitFigure, kind ?? "length");
    return JSON.stringify(of);
  }

  function changed(name: string, { before, after }: LeafChange, what: string, title: string, kind?: QuantityKind): string {
    const said = [before, after].map((one) => (one === undefined ? "" : shown(one, kind)));
    // two lengths between the same marks of a tape are told apart in millimetres
    const fine = said[0] === said[1] && kind === "length" && typeof before === "number" && typeof after === "number";
    const [was = "", is = ""] = fine ? [before, after].map((one) => formatQuantity(kind, one, { lengths: "metric", marks: MARKS })) : said;
    const figures = { what, title, field: name, before: was, after: is };
    const way = before === undefined ? ("added" as const) : after === undefined ? ("removed" as const) : ("changed" as const);
    return fill(texts[title === "" ? (`own-${way}` as const) : way], figures);
  }

  /** One line of what changed. */
  function difference({ list, id, title, change, path = "", kind, ...rest }: SheetDifference): string {
    const what = list === undefined ? "" : texts[`list.${list}`];
    const named = list === undefined ? "" : words(title) || known(`value.${id}`) || id;
    if (change === "order") return fill(texts.order, { what });
    return change === "changed" ? changed(field(path), { path, ...rest }, what, named, kind) : fill(texts[change], { what, title: named });
  }

  /** One line of what changed in a kit card; `figure`: what a fact is called. */
  function cardDifference(of: LeafChange, figure: (key: string) => string): string {
    const [list, key] = of.path.split("/");
    return changed(list === "facts" && key !== undefined ? figure(key) : field(of.path), of, "", "");
  }

  /** The thing that a place of the sheet lies in, by its title: 'sheet/checks/rim-level' is “Rim out of level”. */
  function placed(place: string): string {
    const title = words(names.get(place.split("/")[2] ?? ""));
    if (title === "") return place;
    return language === "es" ? `«${title}»` : `“${title}”`;
  }

  /** Whether honest work to the aim could be told from work that is not: what somebody reads beside a limit as it is typed. */
  function standing(
    of: LimitStanding,
    kind: QuantityKind,
    refusal: (fault: Extract<LimitStanding, { is: "at fault" }>["faults"][number]) => string,
  ): string {
    if (of.is === "not asked") return texts["not-asked"];
    if (of.is === "at fault") return of.faults.map((fault) => refusal({ ...fault, place: placed(fault.place) })).join(" ");
    const size = (micrometres: number): string =>
      kind === "length" ? doubtText("length", Math.ceil(micrometres), { lengths }) : quantity(kind, Math.round(micrometres));
    return fill(texts.decided, { room: quantity(kind, Math.round(of.room)), needed: size(of.needed) });
  }

  return {
    text: (key: SheetText): string => texts[key],
    field,
    value,
    words,
    quantity,
    limit,
    difference,
    cardDifference,
    standing,
    nameOf: (id: string): string => words(names.get(id)) || id,
  };
}

export type SheetSayer = ReturnType<typeof makeSheetSayer>;
