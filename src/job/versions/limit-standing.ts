import type { Json } from "../../ledger/index.ts";
import type { Refusal } from "../../outcome/index.ts";
import { canBeDecided } from "../../tolerance/index.ts";
import type { Check, ToleranceSheet } from "../sheet.ts";
import { sheetFaults } from "../sheet-faults.ts";
import { onPaper, usualUncertainty, withoutRoom } from "../sheet-limits.ts";

/** Whether the limits of one check can be decided by honest work. */
export type LimitStanding =
  /** Room from the aim to the nearer limit, and the room that the instrument needs; fixed unit of the check's kind. */
  | { readonly is: "decided"; readonly room: number; readonly needed: number }
  /** No work is measured against an aim here: a clock, a count, a figure of the design, or nothing that can hold. */
  | { readonly is: "not asked" }
  | { readonly is: "at fault"; readonly faults: readonly Refusal[] };

function roomOf(sheet: ToleranceSheet, check: Check): LimitStanding {
  const [aim, lower, upper] = [onPaper(check.aim), onPaper(check.lower), onPaper(check.upper)];
  const limits = [lower, upper].filter((limit) => limit !== undefined);
  if (withoutRoom.has(check.function) || aim === undefined || limits.some(({ base }) => base !== aim.base)) return { is: "not asked" };
  const u = usualUncertainty(sheet, check);
  if (u === undefined) return { is: "not asked" };
  const decided = canBeDecided({
    aim: aim.value,
    ...(lower ? { lower: lower.value } : {}),
    ...(upper ? { upper: upper.value } : {}),
    u,
    rule: check.rule === "simple acceptance" ? "simple" : "guarded",
  });
  return decided.ok ? { is: "decided", room: decided.value.room, needed: decided.value.needed } : { is: "not asked" };
}

/** What a check reads besides its items: read by name, so that a name that is not there is a fault of the check. */
const everyItemOf = (check: Check): ReadonlySet<string> =>
  new Set(
    [
      ...(check.items ?? []),
      ...(check.minus ?? []),
      ...(check.bucket ?? []),
      ...(check.conditions ?? []),
      ...Object.values(check.weather ?? {}),
      ...(check.ways ?? []).flatMap((way) => way.items),
      check.until,
      ...[check.aim, check.lower, check.upper].flatMap((limit) =>
        typeof limit === "object" && limit !== null ? [limit.item, ...(limit.items ?? [])] : [],
      ),
    ].filter((id) => id !== undefined),
  );

/** The same, where nobody has written some of its words yet: an empty text is no text, and would stop everything that reads the sheet. */
const worded = (sheet: ToleranceSheet): ToleranceSheet =>
  JSON.parse(JSON.stringify(sheet, (_, value: unknown) => (value === "" ? "-" : value))) as ToleranceSheet;

/**
 * How the limits of one check of a sheet stand that somebody is still typing: what is at fault elsewhere in it takes nothing from
 * the answer. Total: whatever is not in its shape yet is told as a fault of the check.
 */
export function limitStanding(draft: ToleranceSheet, id: string): LimitStanding {
  const check = draft.checks.find((one) => one.id === id);
  if (check === undefined) return { is: "not asked" };
  const read = everyItemOf(check);
  const items = draft.items.filter((item) => read.has(item.id) || item.heightMark === true);
  const { callbacks: _, beforehand: __, ...rest } = draft;
  const sheet = worded({ ...rest, items, checks: [check], oneOf: [] });
  const faults = sheetFaults(sheet as unknown as Json).filter(({ place }) => place.startsWith("sheet/checks/"));
  return faults.length > 0 ? { is: "at fault", faults } : roomOf(sheet, check);
}
