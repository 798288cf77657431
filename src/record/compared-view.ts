import type { ExpectationId, Finding } from "../job/index.ts";
import type { Context } from "./context.ts";
import { aimOf, checkOf, expectedBy, measuredWhere } from "./designed.ts";
import type { ComparedView } from "./model-drawn.ts";
import { sayArithmetic } from "./say-arithmetic.ts";

/** Aims that the design leads to with a doubt of their own. */
const derivedAims: Readonly<Record<string, ExpectationId>> = { "expected draw-down": "drawDown", "expected flow": "flow" };
/** What a cure asks for is no expectation of the work, and what an item typed is none of the design. */
const noDesign: ReadonlySet<string> = new Set(["cure time", "as typed"]);

/** Each figure of the design that something was measured against, beside what was measured. */
export function comparedViews(context: Context): readonly ComparedView[] {
  const { sayer, language } = context;
  const say = sayArithmetic(language);
  const isDesigned = (aim: string | undefined): boolean => aim !== undefined && !noDesign.has(aim);
  const rows = measuredWhere(context, (check) => isDesigned(aimOf(check)) && check.asks === undefined);
  if (rows.length === 0) return [];
  const expected = expectedBy(context);

  function row(finding: Finding): readonly ComparedView[] {
    const { kind, value, doubt, aim } = finding;
    if (kind === undefined || value === undefined || aim === undefined) return [];
    const marks = sayer.marks(finding);
    const size = (of: number): string => sayer.quantity(kind, of, marks);
    const derived = expected.get(derivedAims[aimOf(checkOf(context, finding)) ?? ""] ?? "flow");
    const own = derived?.kind === kind && derived.value === aim ? derived.doubt : undefined;
    const off = value - aim;
    const said =
      size(Math.abs(off)) === size(0) ? say("value.same") : say(off > 0 ? "value.more" : "value.less", { value: size(Math.abs(off)) });
    return [
      {
        title: sayer.titleOf(finding),
        expected: own ? say("value.doubt", { value: size(aim), doubt: sayer.doubt(kind, own) }) : size(aim),
        measured: size(value),
        difference: doubt ? say("value.doubt", { value: said, doubt: sayer.doubt(kind, doubt) }) : said,
      },
    ];
  }
  return rows.flatMap(row);
}
