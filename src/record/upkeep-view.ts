import { designSwitches, type Expectation, type ExpectationId } from "../job/index.ts";
import type { ServiceKind } from "../warranty/index.ts";
import type { Context } from "./context.ts";
import { designOf, expectedBy, measuredTilt } from "./designed.ts";
import { figureText } from "./equipment-view.ts";
import type { UpkeepView } from "./model.ts";
import { sayArithmetic } from "./say-arithmetic.ts";
import { makeDesignSayer } from "./say-design.ts";
import { makeWarrantySayer } from "./say-warranty.ts";
import { fill } from "./speaking.ts";
import { yearlyDayText } from "./when.ts";
import { type UpkeepText, upkeepEn } from "./words/upkeep-en.ts";
import { upkeepEs } from "./words/upkeep-es.ts";

type Lines = readonly string[];
type Say = (key: UpkeepText, figures?: Readonly<Record<string, string>>) => string;

/** What the sentences take from the design: figures with their doubt, or nothing. */
function figuresOf(context: Context) {
  const { language, settings } = context;
  const sayer = makeDesignSayer({ language, units: settings.units });
  // as the water budget says it: two figures of one thing in one record would be a riddle
  const all = expectedBy(context, measuredTilt(context));
  const withDoubt = sayArithmetic(language);
  const text = (id: ExpectationId): string => {
    const one: Expectation | undefined = all.get(id);
    if (one === undefined) return "";
    const { value, doubt } = sayer.expectation(one);
    return value === "" || doubt === "" ? value : withDoubt("value.doubt", { value, doubt });
  };
  const waits = (id: ExpectationId): string => {
    const one = all.get(id);
    return one === undefined ? "" : sayer.expectation(one).needs.join("; ");
  };
  return { text, waits, title: sayer.title };
}

function services({ settings, language }: Context, kind: ServiceKind, say: Say, key: UpkeepText): Lines {
  const named = makeWarrantySayer(language).serviceName(kind);
  return settings.warranty.services.flatMap((plan) =>
    plan.kind === kind && plan.month !== undefined && plan.day !== undefined
      ? [say(key, { service: named, day: yearlyDayText({ month: plan.month, day: plan.day }, language) })]
      : [],
  );
}

/**
 * How to run it, how long its water lasts, topping up, winter and spring: the job's own figures in sentences of common practice.
 * Nothing for a job without a tolerance sheet: what it is for is not known.
 */
export function upkeepView(context: Context): UpkeepView | undefined {
  const { state, sheet, language } = context;
  if (state.sheet === undefined) return undefined;
  const words = language === "es" ? upkeepEs : upkeepEn;
  const say: Say = (key, figures = {}) => fill(words[key], figures);
  const { text, waits, title } = figuresOf(context);
  const design = designOf(context);
  const switches = designSwitches(sheet, design);
  const [drawDown, transit, air, days, left, winter] = (
    ["drawDown", "waterInTransit", "timeUntilAir", "daysWithoutMakeUp", "reserveLeft", "leaveForWinter"] as const
  ).map(text) as [string, string, string, string, string, string];
  const evaporation = design.figures.evaporationPerDay;
  const when = (isSo: boolean, line: () => string): Lines => (isSo ? [line()] : []);
  const needs = waits("daysWithoutMakeUp");
  const parts: readonly (readonly [UpkeepText, Lines])[] = [
    [
      "title-running",
      [
        say("run-hand"),
        ...when(drawDown !== "" && transit !== "", () => say("run-falls", { drawDown, transit })),
        ...when(air !== "", () => say("run-air", { time: air })),
        say("run-intake"),
        say("run-lid"),
        say("run-dig"),
      ],
    ],
    [
      "title-without",
      [
        ...when(days !== "", () => say("days-last", { days })),
        ...when(days === "" && needs !== "", () => say("days-wait", { needs })),
        ...when(days !== "" && evaporation !== undefined && evaporation !== "unknown", () =>
          say("days-sun", { depth: figureText(context, evaporation) }),
        ),
        ...when(left !== "", () => say("days-left", { left })),
      ],
    ],
    [
      "title-topping",
      [
        ...when(switches.makeUpValve !== undefined, () => say(switches.makeUpValve ? "top-valve" : "top-hand")),
        say("top-hose"),
        say("top-note"),
      ],
    ],
    [
      "title-winter",
      [
        ...services(context, "winter", say, "winter-service"),
        say("winter-pump"),
        say("winter-pipe"),
        ...when(switches.checkValve === true, () => say("winter-valve")),
        ...when(winter !== "", () => say("winter-leave", { title: title("leaveForWinter"), value: winter })),
        say("winter-ice"),
      ],
    ],
    ["title-spring", [...services(context, "spring", say, "spring-service"), say("spring-look"), say("spring-cord"), say("spring-run")]],
  ];
  return {
    parts: parts.flatMap(([key, lines]) => (lines.length === 0 ? [] : [{ title: say(key), lines }])),
    note: say("source"),
  };
}
