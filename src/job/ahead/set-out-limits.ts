import { type SetOutLimits, type SetOutPlace, setOutPlaces } from "../../geometry/index.ts";
import { fixedPerSi } from "../../units/index.ts";
import { limitsOf } from "../check-limits.ts";
import { askedChecks } from "../instances.ts";
import { type Check, itemNamed, type SetOutItem, type ToleranceSheet } from "../sheet.ts";
import type { JobState } from "../state.ts";

const areOf = (sheet: ToleranceSheet, ids: readonly string[] | undefined, what: SetOutItem): boolean =>
  ids !== undefined && ids.length > 0 && ids.every((id) => itemNamed(sheet, id)?.setOut === what);

/** A check that takes finished grade from the rod readings of a place: its limits are depths under grade. */
const isDepthOf = (sheet: ToleranceSheet, check: Check, place: SetOutPlace): boolean =>
  check.function === "single value" && areOf(sheet, check.items, place) && areOf(sheet, check.minus, "finished grade");

/** How far below and above its aim each place may lie, metres, by the checks of the sheet that are asked on this job. */
export function placeLimits(state: JobState, sheet: ToleranceSheet): SetOutLimits {
  const checks = askedChecks(state, sheet);
  const perMetre = fixedPerSi("length");
  return Object.fromEntries(
    setOutPlaces.flatMap((place) => {
      const found = checks.find(({ check }) => isDepthOf(sheet, check, place));
      if (found === undefined) return [];
      const { aim, lower, upper } = limitsOf(state, sheet, found.check, found.tag, found.check.holds).bounds;
      if (aim === undefined) return [];
      const lowBy = upper === undefined ? {} : { lowBy: (upper - aim) / perMetre };
      const highBy = lower === undefined ? {} : { highBy: (aim - lower) / perMetre };
      return [[place, { ...lowBy, ...highBy }] as const];
    }),
  );
}
