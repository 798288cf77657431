import type { Check, Finding } from "../job/index.ts";
import type { Context } from "./context.ts";
import { typedText } from "./corrections-view.ts";
import { aimOf, checkOf } from "./designed.ts";
import type { TriedView } from "./model-drawn.ts";
import { sayArithmetic } from "./say-arithmetic.ts";
import { makeSources } from "./say-sources.ts";

const triedBy: ReadonlySet<Check["function"]> = new Set(["loss a day", "steady", "flow as measured", "room for rain"]);

/** What is tried with water: the level once it runs, how far it went down, the flow, what it loses a day, the rain that it has room for. */
const isTried = (check: Check): boolean => triedBy.has(check.function) || aimOf(check) === "expected draw-down";

/** Start-up and leak tests that somebody has begun, each with its readings, its value and what would settle it. */
export function triedViews(context: Context): readonly TriedView[] {
  const { findings, sayer, state, sheet, beforeRework, language, settings } = context;
  const say = sayArithmetic(language);

  const sources = makeSources({ language, units: settings.units });

  function readingsOf({ items, minus = [], bucket = [], weather }: Check, tag: string | undefined): string {
    const read = [...minus, ...items, ...bucket, ...Object.values(weather ?? {})].flatMap((id) => {
      const title = sayer.words(sheet.items.find((item) => item.id === id)?.title);
      return (state.byItem.get(id) ?? [])
        .filter((fact) => fact.kind === "reading-taken" && fact.what.tag === tag && !beforeRework.has(fact.id))
        .map((fact) => say("tried.reading", { title, typed: typedText(context, fact.what, false) }));
    });
    return read.join("; ");
  }

  function view(finding: Finding): readonly TriedView[] {
    const check = checkOf(context, finding);
    if (check === undefined || !isTried(check) || finding.entries.length === 0) return [];
    const { kind, value, doubt } = finding;
    const measured = kind === undefined || value === undefined ? "" : sayer.value(finding);
    return [
      {
        title: sayer.titleOf(finding),
        readings: readingsOf(check, finding.tag),
        value:
          kind !== undefined && measured !== "" && doubt
            ? say("value.doubt", { value: measured, doubt: sayer.doubt(kind, doubt) })
            : measured,
        limit: finding.lower === undefined && finding.upper === undefined ? "" : sayer.limit(finding),
        says: [sayer.finding(finding), sources(finding)].filter((text) => text !== "").join(" "),
      },
    ];
  }
  return findings.flatMap(view);
}
