import { coveredOf } from "../covered.ts";
import { askedItems } from "../instances.ts";
import type { Live } from "../live.ts";
import { type Instance, seriesOf } from "../series.ts";
import type { JobState } from "../state.ts";
import { hiddenBy } from "./beside-covering.ts";
import { lookAt } from "./looks.ts";

/** A picture that nobody has looked at, and the covering that what it shows holds. */
export interface ToLookAt {
  readonly picture: Live;
  readonly instance: Instance;
  readonly covering: string;
}

/**
 * The pictures that count for what holds a covering and that nobody has looked at yet: those of coverings still open first, in
 * the order of the sheet's coverings and then of its items. A picture that holds nothing is nobody's work.
 */
export function picturesToLookAt(state: JobState): readonly ToLookAt[] {
  const { sheet } = state;
  if (sheet === undefined) return [];
  const order = new Map(sheet.coverings.map(({ id }, index) => [id, index]));
  const found = askedItems(state, sheet)
    .filter(({ item }) => item.kind === "picture")
    .flatMap((instance) => {
      const covering = hiddenBy(state, instance);
      if (covering === undefined) return [];
      return seriesOf(state, instance)
        .counting.filter(({ id }) => lookAt(state, id) === undefined)
        .map((picture): ToLookAt => ({ picture, instance, covering }));
    });
  const place = ({ covering }: ToLookAt): number => (order.get(covering) ?? 0) + (coveredOf(state, covering) ? sheet.coverings.length : 0);
  return found.sort((a, b) => place(a) - place(b));
}
