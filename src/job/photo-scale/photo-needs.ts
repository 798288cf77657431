import { COVERAGE_FACTOR } from "../../doubt/index.ts";
import { canBeDecided } from "../../tolerance/index.ts";
import { oncePer } from "../once-per.ts";
import type { Check, Item, ToleranceSheet } from "../sheet.ts";
import { onPaper } from "../sheet-limits.ts";

/** Own: where no limit says how sure a length has to be, a photo that knows it to 1/4 in is worth comparing, micrometres. */
const NEEDED_WITHOUT_LIMIT = 6_350;

/** Whether a reading is one that a photo with a card can stand beside: a length by tape, of which the sheet says that it lies on one plane. */
export function isMeasurable(sheet: ToleranceSheet, { kind, quantity, instrument, inSetUp, onOnePlane }: Item): boolean {
  if (onOnePlane !== true || kind !== "reading" || (quantity ?? "length") !== "length" || inSetUp === true) return false;
  const tool = sheet.instruments.find(({ id }) => id === instrument);
  return tool !== undefined && tool.line === undefined && tool.exact !== true;
}

/** How surely the thing itself ends where tape or eye find it: half-width of what a reading's placings come to, micrometres. */
export function photoPlacing({ placings }: ToleranceSheet, { placing, placingAlso }: Item): number {
  const halfWidth = (id: string | undefined): number => placings.find((one) => one.id === id)?.halfWidth ?? 0;
  const [first, second] = [halfWidth(placing), halfWidth(placingAlso)];
  return Math.round(Math.sqrt(first * first + second * second));
}

/** U with which work done to the check's aim can still be told from its limit, micrometres; undefined where that is no question. */
function neededBy({ aim, lower, upper, rule }: Check): number | undefined {
  const [aimed, least, most] = [onPaper(aim), onPaper(lower), onPaper(upper)];
  if (aimed === undefined || [least, most].every((limit) => limit === undefined)) return undefined;
  if ([least, most].some((limit) => limit !== undefined && limit.base !== aimed.base)) return undefined;
  const decided = canBeDecided({
    aim: aimed.value,
    ...(least ? { lower: least.value } : {}),
    ...(most ? { upper: most.value } : {}),
    u: 0,
    rule: rule === "simple acceptance" ? "simple" : "guarded",
  });
  if (!decided.ok) return undefined;
  const largest = Math.floor(COVERAGE_FACTOR * decided.value.largestUncertainty);
  return Number.isSafeInteger(largest) && largest > 0 ? largest : undefined;
}

/**
 * The largest U of k = 2, micrometres, with which a length is of use here, of a photo and of a tape: what the limits of its own checks
 * need, else a quarter inch. With less sure ones nearly any two would agree.
 */
export const photoNeeds = oncePer((sheet: ToleranceSheet, item: string): number => {
  const needs = sheet.checks
    .filter(({ function: of, items }) => of === "single value" && items.includes(item))
    .flatMap((check) => neededBy(check) ?? []);
  return needs.length === 0 ? NEEDED_WITHOUT_LIMIT : Math.min(...needs);
});
