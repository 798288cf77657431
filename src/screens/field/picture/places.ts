import { type Instance, isEntered, itemNamed } from "../../../job/index.ts";
import { openFirst } from "../next.ts";
import { askedIn } from "../reading/next-open.ts";
import type { ToldOnPhone } from "../told.ts";

/** Where a picture can belong. */
export interface Places {
  /** Asked for and not there: first what holds the covering that comes next, then in the order of the steps. */
  readonly open: readonly Instance[];
  /** There already; a further picture adds to it. */
  readonly taken: readonly Instance[];
}

export const placeKey = ({ item, tag }: Instance): string => `${item.id} ${tag ?? ""}`;

/** Every picture that this job asks, in the order in which a crew wants to put its photos to them. */
export function picturePlaces(told: Pick<ToldOnPhone, "now">): Places {
  const { state, clearances } = told.now;
  const { sheet } = state;
  if (sheet === undefined) return { open: [], taken: [] };
  const asked = sheet.steps.flatMap(({ id }) => askedIn(told, id)).filter(({ item }) => item.kind === "picture");
  const byKey = new Map(asked.map((instance) => [placeKey(instance), instance]));
  const holding = openFirst(clearances)
    .flatMap(({ lines }) => lines)
    .flatMap(({ about: { item: id, tag } }) => {
      const item = id === undefined ? undefined : itemNamed(sheet, id);
      const instance = item && byKey.get(placeKey(tag === undefined ? { item } : { item, tag }));
      return instance === undefined ? [] : [instance];
    });
  const missing = asked.filter((instance) => !isEntered(state, instance));
  const last = ({ item }: Instance): number => (item.apart === true || item.weight === "if you have it" ? 1 : 0);
  const open = [...new Set([...holding, ...[...missing].sort((a, b) => last(a) - last(b))])];
  return { open, taken: asked.filter((instance) => !open.includes(instance)) };
}
