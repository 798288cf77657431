import { COVERAGE_FACTOR } from "../../doubt/index.ts";
import { canBeDecided } from "../../tolerance/index.ts";
import { oncePer } from "../once-per.ts";
import { type Check, type Item, itemNamed, type ToleranceSheet } from "../sheet.ts";
import { onPaper } from "../sheet-limits.ts";

/** Own: where no limit says how sure a length has to be, a photo that knows it to 1/4 in is worth comparing, micrometres. */
const NEEDED_WITHOUT_LIMIT = 6_350;

/** Whether a reading is one that a photo with a card can stand beside: a length from one place to another, read with a tape. */
export function isMeasurable(sheet: ToleranceSheet, { kind, quantity, instrument, inSetUp }: Item): boolean {
  if (kind !== "reading" || (quantity ?? "length") !== "length" || inSetUp === true) return false;
  const tool = sheet.instruments.find(({ id }) => id === instrument);
  return tool !== undefined && tool.line === undefined && tool.exact !== true;
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

/** The largest U of k = 2, micrometres, with which a photo's length is of use beside a reading: its own limit's need, where it has one. */
export const photoNeeds = oncePer((sheet: ToleranceSheet, item: string): number => {
  const own = itemNamed(sheet, item);
  const needs = sheet.checks
    .filter(({ function: of, items }) => of === "single value" && own !== undefined && items.includes(item))
    .flatMap((check) => neededBy(check) ?? []);
  return Math.min(NEEDED_WITHOUT_LIMIT, ...needs);
});
