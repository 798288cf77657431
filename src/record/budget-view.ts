import type { Expectation, ExpectationId } from "../job/index.ts";
import type { Context } from "./context.ts";
import { expectedBy, measuredTilt } from "./designed.ts";
import type { BudgetView } from "./model-drawn.ts";
import { type SayArithmetic, sayArithmetic } from "./say-arithmetic.ts";
import { makeDesignSayer } from "./say-design.ts";

/** In the order of the water's way. */
const lines = [
  "basinGross",
  "waterBelowIntake",
  "waterLostToTilt",
  "basinUsable",
  "waterInStream",
  "waterInPools",
  "drainBack",
  "waterInTransit",
  "headOnLip",
  "drawDown",
  "reserveRatio",
  "reserveLeft",
  "timeToFill",
  "timeUntilAir",
  "daysWithoutMakeUp",
] as const satisfies readonly ExpectationId[];

const PER_MILLION = 1e6;

/** A ratio as so many times; its doubt rounded up to the tenth. */
function asTimes({ value, doubt = 0 }: Expectation, say: SayArithmetic): { readonly value: string; readonly doubt: string } {
  if (value === undefined) return { value: "", doubt: "" };
  return {
    value: say("budget.times", { value: (value / PER_MILLION).toFixed(1) }),
    doubt: doubt === 0 ? "" : (Math.ceil((doubt / PER_MILLION) * 10) / 10).toFixed(1),
  };
}

export interface WaterBudget {
  readonly lines: readonly BudgetView[];
  readonly notes: readonly string[];
}

/** Water in the basin, away from it and left, as the design and the measured tilt lead to it; undefined where nothing can be said. */
export function budgetView(context: Context): WaterBudget | undefined {
  const { language, settings } = context;
  const say = sayArithmetic(language);
  const sayer = makeDesignSayer({ language, units: settings.units });
  const all = expectedBy(context, measuredTilt(context));
  const wanted = lines.flatMap((id) => all.get(id) ?? []);
  const isThere = ({ value, answer }: Expectation): boolean => value !== undefined || answer !== undefined;
  const there = wanted.filter(isThere);
  if (there.length === 0) return undefined;
  const assumed = [...new Set(there.flatMap(({ assumes = [] }) => assumes))].map(sayer.figure);
  const waiting = wanted.filter((one) => !isThere(one));
  return {
    lines: there.map((one) => {
      const { title, beside, contributors, caution, ...said } = sayer.expectation(one);
      const { value, doubt } = one.id === "reserveRatio" ? asTimes(one, say) : said;
      return {
        title,
        value: value === "" ? beside : doubt === "" ? value : say("value.doubt", { value, doubt }),
        most: contributors[0] ?? "",
        beside: [value === "" ? "" : beside, caution].filter((text) => text !== "").join("; "),
      };
    }),
    notes: [
      ...(assumed.length === 0 ? [] : [say("budget.assumes", { assumes: assumed.join("; ") })]),
      ...waiting.map((one) =>
        one.refusal === undefined
          ? say("budget.waits", { title: sayer.title(one.id), needs: sayer.expectation(one).needs.join("; ") })
          : `${sayer.title(one.id)}: ${context.sayer.refusal(one.refusal)}`,
      ),
    ],
  };
}
