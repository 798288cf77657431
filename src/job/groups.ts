import type { Finding } from "./finding.ts";
import { type Instance, oneOfHolding } from "./series.ts";
import type { OneOf, ToleranceSheet } from "./sheet.ts";

/** An item with its finding, before it is known whether its group of a 'one of' was chosen. */
export interface Found {
  readonly instance: Instance;
  readonly finding: Finding;
}

/** By 'one of': the place of the group that it is satisfied by, or that its lines ask for. */
export type Chosen = ReadonlyMap<string, number>;

/** Entered, or ruled on by name: a go-ahead for all that was open says nothing of which way was gone. */
const isThere = ({ verdict, by }: Finding): boolean =>
  by?.way === "concession" || (verdict !== "not taken" && verdict !== "could not be taken");

/** The first whole group; while none is whole, the one that is furthest on, so that lines ask for the rest of what was begun. */
function chosenGroup(one: OneOf, items: readonly Found[]): number {
  const shares = one.groups.map((group) => {
    const own = items.filter(({ instance }) => group.items.includes(instance.item.id));
    return own.filter(({ finding }) => isThere(finding)).length / Math.max(1, own.length);
  });
  return shares.indexOf(Math.max(...shares));
}

export const chosenGroups = (sheet: ToleranceSheet, items: readonly Found[]): Chosen =>
  new Map(sheet.oneOf.map((one) => [one.id, chosenGroup(one, items)]));

/** Whether something that reads these items belongs to a group that was not chosen, and so asks for nothing. */
export function isIdle(sheet: ToleranceSheet, ids: readonly string[], chosen: Chosen): boolean {
  return ids.some((id) => {
    const one = oneOfHolding(sheet, id);
    const group = one?.groups[chosen.get(one.id) ?? 0];
    return group !== undefined && !group.items.includes(id);
  });
}

/** What nobody entered of such a group holds nothing: it is left out, or printed as somebody's word. Evidence stays. */
export function idleFinding(finding: Finding): readonly Finding[] {
  if (isThere(finding)) return [finding];
  if (finding.verdict === "not taken") return [];
  const { holds: _, by: __, ...rest } = finding;
  return [{ ...rest, weight: "if you have it" }];
}
