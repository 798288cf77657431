import { factsOf, type Typed } from "../job/index.ts";
import type { Context } from "./context.ts";
import { designOf } from "./designed.ts";
import { figureText } from "./equipment-view.ts";
import type { LabelledText, RecordModel } from "./model.ts";
import type { PlanView } from "./model-drawn.ts";

/** Figures of the design that tell what was built, in the order of the water's way. */
const telling = ["rimBelowGrade", "pipeSize", "pipeRun", "staticHead", "spillwayWidth"] as const;

/** A point has a number on the plan, a mark a letter. */
const isPoint = ({ sign }: { readonly sign: string }): boolean => /^\d/.test(sign);

function builtLines(context: Context): readonly LabelledText[] {
  const { state, sayer, texts } = context;
  const figures: Readonly<Record<string, Typed | "unknown">> = designOf(context).figures;
  const parts = state.kitCards.map(({ part }) => part).join("; ");
  const days = [...new Set(factsOf(state, "visit-begun").map(({ at }) => sayer.moment(at).split(",")[0] as string))].join("; ");
  return [
    { label: texts("built-parts"), text: parts },
    { label: texts("built-days"), text: days },
    ...telling.flatMap((key) =>
      figures[key] === undefined ? [] : [{ label: sayer.figureTitle(key), text: figureText(context, figures[key]) }],
    ),
  ].filter(({ text }) => text !== "");
}

/** What was built, and what lies buried where: the parts of the first page that are said again, in full, further on. */
export function summaryView(context: Context, plan: PlanView | undefined): RecordModel["summary"] {
  const tied = plan?.tied ?? [];
  return {
    built: builtLines(context),
    buried: tied.filter(isPoint).map(({ sign, name, ties }) => ({ sign, name, ties })),
    marks: tied
      .filter((one) => !isPoint(one))
      .map(({ sign, name }) => `${sign} ${name}`)
      .join("; "),
  };
}
