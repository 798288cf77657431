import { type Refusal, refuse } from "../outcome/index.ts";
import { type Check, type Item, type OneOf, type ToleranceSheet, tagSetOf, type Weighted } from "./sheet.ts";

const unknown = (place: string, name: string): Refusal => refuse("sheet-unknown-name", place, { name }).refusal;

interface Named {
  readonly id: string;
}

function duplicates(lists: Readonly<Record<string, readonly Named[]>>): readonly Refusal[] {
  return Object.entries(lists).flatMap(([list, things]) =>
    things.flatMap((thing, i) =>
      things.findIndex((other) => other.id === thing.id) < i
        ? [refuse("sheet-duplicate-name", `sheet/${list}/${thing.id}`, { name: thing.id }).refusal]
        : [],
    ),
  );
}

type List = "switches" | "figures" | "instruments" | "placings" | "tagSets" | "coverings" | "cautions" | "steps" | "items";

function listsOf(sheet: ToleranceSheet): Readonly<Record<List, ReadonlySet<string>>> {
  const ids = (things: readonly Named[]): ReadonlySet<string> => new Set(things.map((t) => t.id));
  return {
    switches: ids(sheet.switches),
    figures: ids(sheet.figures),
    instruments: ids(sheet.instruments),
    placings: ids(sheet.placings),
    tagSets: ids(sheet.tagSets),
    coverings: ids(sheet.coverings),
    cautions: ids(sheet.cautions),
    steps: ids(sheet.steps),
    items: ids(sheet.items),
  };
}

type Miss = (place: string, names: readonly (string | undefined)[], list: List) => readonly Refusal[];

function heldFaults(miss: Miss, place: string, { weight, holds }: Weighted, isTagged: boolean): readonly Refusal[] {
  if (weight !== "holds") return holds === undefined ? [] : [unknown(`${place}/holds`, holds)];
  if (holds === "by tag") return isTagged ? [] : [unknown(`${place}/holds`, holds)];
  return holds === undefined ? [unknown(`${place}/holds`, "")] : miss(`${place}/holds`, [holds], "coverings");
}

function itemFaults(miss: Miss, item: Item, isInGroup: boolean): readonly Refusal[] {
  const place = `sheet/items/${item.id}`;
  return [
    ...miss(`${place}/step`, [item.step], "steps"),
    ...miss(`${place}/tags`, [item.tags, item.whenNoTagOf], "tagSets"),
    ...miss(`${place}/needsHidden`, [item.needsHidden], "coverings"),
    ...miss(`${place}/instrument`, [item.instrument], "instruments"),
    ...miss(`${place}/placing`, [item.placing, item.placingAlso], "placings"),
    ...miss(`${place}/cautions`, [...(item.cautions ?? []), ...(item.choices ?? []).map((c) => c.caution)], "cautions"),
    ...miss(`${place}/switches`, [...(item.switches?.on ?? []), ...(item.switches?.off ?? [])], "switches"),
    ...(isInGroup ? [] : heldFaults(miss, place, item, item.tags !== undefined)),
  ];
}

const readByName = ({ items, minus = [], bucket = [], conditions = [], weather, ways = [] }: Check): readonly string[] => [
  ...items,
  ...minus,
  ...bucket,
  ...conditions,
  ...Object.values(weather ?? {}),
  ...ways.flatMap((way) => way.items),
];

function checkFaults(miss: Miss, check: Check, isTagged: boolean): readonly Refusal[] {
  const place = `sheet/checks/${check.id}`;
  const limits = [check.aim, check.lower, check.upper].flatMap((limit) => (typeof limit === "object" ? [limit] : []));
  return [
    ...miss(`${place}/step`, [check.step, check.begins], "steps"),
    ...miss(`${place}/items`, [...readByName(check), check.until, ...limits.flatMap((l) => [l.item, ...(l.items ?? [])])], "items"),
    ...miss(
      `${place}/figure`,
      limits.map((l) => l.figure),
      "figures",
    ),
    ...miss(`${place}/switches`, [...(check.switches?.on ?? []), ...(check.switches?.off ?? [])], "switches"),
    ...heldFaults(miss, place, check, isTagged),
  ];
}

function oneOfFaults(miss: Miss, one: OneOf): readonly Refusal[] {
  const place = `sheet/oneOf/${one.id}`;
  const items = one.groups.flatMap((group) => group.items);
  return [...miss(place, [one.step], "steps"), ...miss(place, [one.holds], "coverings"), ...miss(place, items, "items")];
}

/** Each symptom once, and each look at one check or one item. */
function callbackFaults(miss: Miss, sheet: ToleranceSheet): readonly Refusal[] {
  const checks = new Set(sheet.checks.map(({ id }) => id));
  return (sheet.callbacks ?? []).flatMap(({ symptom, cautions, look }, index, all) => {
    const place = `sheet/callbacks/${symptom}`;
    const isTwice = all.findIndex((other) => other.symptom === symptom) < index;
    return [
      ...(isTwice ? [refuse("sheet-duplicate-name", place, { name: symptom }).refusal] : []),
      ...miss(`${place}/cautions`, cautions, "cautions"),
      ...look.flatMap(({ check, item }) => {
        if ((check === undefined) === (item === undefined)) return [unknown(`${place}/look`, check ?? "")];
        if (check !== undefined) return checks.has(check) ? [] : [unknown(`${place}/look`, check)];
        return miss(`${place}/look`, [item], "items");
      }),
    ];
  });
}

/** Names that a sheet uses and does not define, and names defined twice. */
export function nameFaults(sheet: ToleranceSheet): readonly Refusal[] {
  const known = listsOf(sheet);
  const miss: Miss = (place, names, list) =>
    names.flatMap((name) => (name === undefined || known[list].has(name) ? [] : [unknown(place, name)]));
  const inGroups = new Set(sheet.oneOf.flatMap((one) => one.groups.flatMap((g) => g.items)));
  return [
    ...duplicates({
      switches: sheet.switches,
      figures: sheet.figures,
      instruments: sheet.instruments,
      placings: sheet.placings,
      coverings: sheet.coverings,
      cautions: sheet.cautions,
      steps: sheet.steps,
      // findings and lines name all of these alike
      items: [...sheet.items, ...sheet.checks, ...sheet.tagSets],
      oneOf: sheet.oneOf,
      beforehand: sheet.beforehand ?? [],
    }),
    ...sheet.items.flatMap((item) => itemFaults(miss, item, inGroups.has(item.id))),
    ...sheet.checks.flatMap((check) => checkFaults(miss, check, tagSetOf(sheet.items, check) !== undefined)),
    ...sheet.tagSets.flatMap((set) => miss(`sheet/tagSets/${set.id}`, set.coverings, "coverings")),
    ...sheet.steps.flatMap((step) => miss(`sheet/steps/${step.id}`, step.cautions, "cautions")),
    ...sheet.coverings.flatMap((covering) => miss(`sheet/coverings/${covering.id}`, covering.cautions, "cautions")),
    ...sheet.oneOf.flatMap((one) => oneOfFaults(miss, one)),
    ...callbackFaults(miss, sheet),
    ...(sheet.beforehand ?? []).flatMap((due) => miss(`sheet/beforehand/${due.id}`, due.steps, "steps")),
  ];
}
