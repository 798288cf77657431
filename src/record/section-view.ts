import { type Check, figureValue, type Live } from "../job/index.ts";
import { readQuantity } from "../reading/index.ts";
import { fixedPerSi } from "../units/index.ts";
import type { Context } from "./context.ts";
import { aimOf, designOf, measuredWhere } from "./designed.ts";
import type { Height, SectionToDraw } from "./drawing/section-basin.ts";
import { sectionDrawing } from "./drawing/section-drawing.ts";
import type { SectionView } from "./model-drawn.ts";
import { sayArithmetic } from "./say-arithmetic.ts";
import type { ArithmeticWord } from "./words/arithmetic-en.ts";

const METRE = fixedPerSi("length");

interface Figure {
  /** Metres. */
  readonly value: number;
  readonly text: string;
  readonly origin: "design" | "measured";
}

/** The mean of what was last read of these items, as far as it counts; undefined where one of them was not read. */
function levelRead({ state, beforeRework }: Context, ids: readonly string[]): number | undefined {
  const last = ids.map((id): Live | undefined =>
    (state.byItem.get(id) ?? []).findLast((fact) => fact.kind === "reading-taken" && !beforeRework.has(fact.id)),
  );
  const values = last.flatMap((fact) => {
    const read = fact && readQuantity(String(fact.what.typed), { kind: "length", unit: String(fact.what.unit) });
    return read?.ok ? [read.value.value] : [];
  });
  return values.length === 0 || values.length < ids.length
    ? undefined
    : Math.round(values.reduce((sum, value) => sum + value, 0) / values.length);
}

function figuresOf(context: Context) {
  const { sayer, state, sheet } = context;
  const source = { design: designOf(context), kitCards: state.kitCards };
  const length = (micrometres: number): string => sayer.quantity("length", micrometres);
  const designed = (key: string): Figure | undefined => {
    const value = figureValue(source, key, "length");
    return value === undefined ? undefined : { value: value / METRE, text: length(value), origin: "design" };
  };
  const read = (ids: readonly string[] | undefined): Figure | undefined => {
    const value = ids && levelRead(context, ids);
    return value === undefined ? undefined : { value: value / METRE, text: length(value), origin: "measured" };
  };
  const measured = (isSuch: (check: Check) => boolean): Figure | undefined => {
    const [finding] = measuredWhere(context, isSuch).toSorted((a, b) => (a.value ?? 0) - (b.value ?? 0));
    return finding?.value === undefined ? undefined : { value: finding.value / METRE, text: sayer.value(finding), origin: "measured" };
  };
  const drawn = sheet.checks.find((check) => aimOf(check) === "expected draw-down");
  return {
    rim: measured((check) => aimOf(check) === "rim below finished grade") ?? designed("rimBelowGrade"),
    depth: designed("basinDepth"),
    rest: read(drawn?.minus),
    running: read(drawn?.items),
    intake: designed("intakeHeight"),
    cover: measured(({ shows }) => shows === "depth of cover"),
    head: designed("staticHead"),
    run: designed("pipeRun"),
  };
}

const names = {
  rim: "section.rim",
  depth: "section.depth",
  rest: "section.rest",
  running: "section.running",
  intake: "section.intake",
  cover: "section.cover",
  head: "section.head",
  run: "section.run",
} as const satisfies Readonly<Record<string, ArithmeticWord>>;

/** The section along the pipe as far as the job's figures go, what is missing named; undefined without rim and depth of the basin. */
export function sectionView(context: Context): SectionView | undefined {
  const say = sayArithmetic(context.language);
  const figures = figuresOf(context);
  const { rim, depth, rest, running, intake, cover, head, run } = figures;
  if (rim === undefined || depth === undefined) return undefined;
  const keys = Object.keys(names) as (keyof typeof names)[];
  const value = ({ text, origin }: Figure): string => `${text} (${say(`origin.${origin}`)})`;
  const lies = (key: keyof typeof names, text: string): string => say("section.lies", { what: say(names[key]), value: text });
  const down = (key: "rest" | "running", { value: metres, text }: Figure): Height => ({
    over: -rim.value - metres,
    text: lies(key, say("section.down", { value: text })),
  });
  const floor = -rim.value - depth.value;
  const said = keys.flatMap((key) => {
    const figure = figures[key];
    return figure === undefined ? [] : [lies(key, value(figure))];
  });
  const lipOver = head && running ? -rim.value - running.value + head.value : undefined;
  const toDraw: SectionToDraw = {
    rim: { over: -rim.value, text: `${say(names.rim)}\n${value(rim)}` },
    floor: { over: floor, text: `${say(names.depth)}\n${value(depth)}` },
    ...(rest && { rest: down("rest", rest) }),
    ...(running && { running: down("running", running) }),
    ...(intake && { intake: { over: floor + intake.value, text: lies("intake", value(intake)) } }),
    ...(cover && { cover: { over: -cover.value, text: `${say(names.cover)}\n${value(cover)}` } }),
    ...(head && lipOver !== undefined && { lip: { over: lipOver, text: `${say(names.head)}\n${value(head)}` } }),
    ...(run && { pipeRun: lies("run", value(run)) }),
    says: said.join("; "),
    units: context.settings.units,
  };
  const drawing = sectionDrawing(toDraw, say);
  if (!drawing.ok) return undefined;
  const missing = keys.filter((key) => figures[key] === undefined).map((key) => say(names[key]));
  return { drawing: drawing.value, notes: missing.length === 0 ? [] : [say("section.missing", { missing: missing.join("; ") })] };
}
