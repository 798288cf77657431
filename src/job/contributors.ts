import { roleOfSource, total, type Uncertain } from "../doubt/index.ts";
import { toInteger } from "../tolerance/index.ts";
import { fixedPerSi, type QuantityKind } from "../units/index.ts";
import type { Finding } from "./finding.ts";

/** `reading:17/watch-start` is the watch, whichever the reading; what is of no reading keeps its name. */
const nameOf = (source: string): string =>
  roleOfSource(source) ??
  (source.startsWith("reading:") ? source.slice(source.lastIndexOf("/") + 1).replace(/-(?:start|stop)$/, "") : source);

/** The three that bring the most doubt, readings and figures of the design alike, by name; largest first. */
export function namedContributors(value: Uncertain, kind: QuantityKind): NonNullable<Finding["contributors"]> {
  const squares = new Map<string, number[]>();
  for (const [source, part] of value.parts) squares.set(nameOf(source), [...(squares.get(nameOf(source)) ?? []), part * part]);
  return [...squares]
    .map(([name, list]) => ({ name, u: toInteger(Math.sqrt(total(list)) * fixedPerSi(kind)) }))
    .sort((a, b) => b.u - a.u || (a.name < b.name ? -1 : 1))
    .slice(0, 3);
}
