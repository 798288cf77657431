import { type Refusal, refuse } from "../outcome/index.ts";
import type { Check, Item, LimitFigure, ToleranceSheet } from "./sheet.ts";

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

const figureOf = (limit: LimitFigure | undefined): { readonly figure?: string; readonly item?: string } =>
  typeof limit === "object" ? limit : {};

/** Names that a sheet uses and does not define, names defined twice, and forms of weight that contradict themselves. */
export function nameFaults(sheet: ToleranceSheet): readonly Refusal[] {
  const ids = (things: readonly Named[]): ReadonlySet<string> => new Set(things.map((t) => t.id));
  const known = {
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
  const miss = (place: string, names: readonly (string | undefined)[], list: keyof typeof known): readonly Refusal[] =>
    names.filter((name) => name !== undefined && !known[list].has(name)).map((name) => unknown(place, String(name)));
  const held = (place: string, thing: Item | Check, tagged: boolean): readonly Refusal[] => {
    if (thing.weight !== "holds") return thing.holds === undefined ? [] : [unknown(`${place}/holds`, thing.holds)];
    if (thing.holds === "by tag") return tagged ? [] : [unknown(`${place}/holds`, "by tag")];
    return thing.holds === undefined ? [unknown(`${place}/holds`, "")] : miss(`${place}/holds`, [thing.holds], "coverings");
  };
  const inGroups = new Set(sheet.oneOf.flatMap((one) => one.groups.flatMap((g) => g.items)));
  const items = sheet.items.flatMap((item) => {
    const place = `sheet/items/${item.id}`;
    return [
      ...miss(`${place}/step`, [item.step], "steps"),
      ...miss(`${place}/tags`, [item.tags, item.whenNoTagOf], "tagSets"),
      ...miss(`${place}/needsHidden`, [item.needsHidden], "coverings"),
      ...miss(`${place}/instrument`, [item.instrument], "instruments"),
      ...miss(`${place}/placing`, [item.placing, item.placingAlso], "placings"),
      ...miss(`${place}/cautions`, [...(item.cautions ?? []), ...(item.choices ?? []).map((c) => c.caution)], "cautions"),
      ...miss(`${place}/switches`, [...(item.switches?.on ?? []), ...(item.switches?.off ?? [])], "switches"),
      ...(inGroups.has(item.id) ? [] : held(place, item, item.tags !== undefined)),
      ...(item.kind === "answer" && (item.choices ?? []).length < 1 ? [unknown(`${place}/choices`, "")] : []),
      ...(item.kind === "reading" && (item.quantity === undefined || item.unit === undefined) ? [unknown(`${place}/quantity`, "")] : []),
    ];
  });
  const checks = sheet.checks.flatMap((check) => {
    const place = `sheet/checks/${check.id}`;
    const limits = [check.aim, check.lower, check.upper].map(figureOf);
    const tagged = sheet.items.some((item) => check.items.includes(item.id) && item.tags !== undefined);
    return [
      ...miss(`${place}/step`, [check.step], "steps"),
      ...miss(`${place}/items`, [...check.items, ...(check.minus ?? []), check.until, ...limits.map((l) => l.item)], "items"),
      ...miss(
        `${place}/figure`,
        limits.map((l) => l.figure),
        "figures",
      ),
      ...miss(`${place}/switches`, [...(check.switches?.on ?? []), ...(check.switches?.off ?? [])], "switches"),
      ...held(place, check, tagged),
    ];
  });
  return [
    ...duplicates({
      switches: sheet.switches,
      figures: sheet.figures,
      instruments: sheet.instruments,
      placings: sheet.placings,
      tagSets: sheet.tagSets,
      coverings: sheet.coverings,
      cautions: sheet.cautions,
      steps: sheet.steps,
      items: [...sheet.items, ...sheet.checks],
      oneOf: sheet.oneOf,
    }),
    ...items,
    ...checks,
    ...sheet.tagSets.flatMap((set) => miss(`sheet/tagSets/${set.id}`, set.coverings, "coverings")),
    ...sheet.steps.flatMap((step) => miss(`sheet/steps/${step.id}`, step.cautions, "cautions")),
    ...sheet.coverings.flatMap((covering) => miss(`sheet/coverings/${covering.id}`, covering.cautions, "cautions")),
    ...sheet.oneOf.flatMap((one) => [
      ...miss(`sheet/oneOf/${one.id}`, [one.step], "steps"),
      ...miss(`sheet/oneOf/${one.id}`, [one.holds], "coverings"),
      ...miss(
        `sheet/oneOf/${one.id}`,
        one.groups.flatMap((g) => g.items),
        "items",
      ),
    ]),
  ];
}
