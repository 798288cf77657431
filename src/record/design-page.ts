import { designAt, designCheck, designSwitches, type FigureSource, factsOf, type JobState, jobWho, lineCurves } from "../job/index.ts";
import type { Json } from "../ledger/index.ts";
import type { DesignPageModel } from "./design-page-model.ts";
import { designQuestionViews, designStanding } from "./design-questions-view.ts";
import { curveDrawing } from "./drawing/curve-drawing.ts";
import type { LabelledText } from "./model.ts";
import { numbersUsedViews } from "./numbers-used-view.ts";
import { makeSayer } from "./say.ts";
import { makeDesignSayer } from "./say-design.ts";
import { sayDesignPage } from "./say-design-page.ts";
import { jobSettings } from "./settings.ts";

export interface DesignPageInput {
  readonly job: string;
  readonly state: JobState;
  /** The company's settings now: name, paper. What the job itself says of zone, language and units comes first. */
  readonly settings: Json;
}

const isText = (value: unknown): value is string => typeof value === "string" && value !== "";

function siteOf(state: JobState): string | undefined {
  const { where } = state.facts.find(({ kind }) => kind === "job-opened")?.entry ?? {};
  const addresses = [jobWho(state), where].map((part) => (part as { readonly address?: unknown } | undefined)?.address);
  return addresses.find(isText);
}

/** The entry from which on the design is what it is. */
function lastChange(state: JobState) {
  const changes = [...factsOf(state, "job-opened"), ...factsOf(state, "design-set"), ...factsOf(state, "version-taken-over")];
  return changes.reduce<(typeof changes)[number] | undefined>((a, b) => (a && a.position > b.position ? a : b), undefined);
}

/**
 * The view model of a job's design check, as the newest design and the kit cards that it took over lead to it. A function of the
 * ledger and the settings alone: the same design gives the same page, whenever it is printed.
 */
export function designPageModel({ job, state, settings: given }: DesignPageInput): DesignPageModel {
  const settings = jobSettings(state, given);
  const { language, units, zone } = settings;
  const source: FigureSource = { design: designAt(state, Number.POSITIVE_INFINITY), kitCards: state.kitCards };
  const switches = state.sheet === undefined ? {} : designSwitches(state.sheet, source.design);
  const say = sayDesignPage(language);
  const sayer = makeDesignSayer({ language, units });
  const { refusal, moment } = makeSayer({ language, units, zone, ...(state.sheet && { sheet: state.sheet }) });
  const last = lastChange(state);
  const [site, title, ownNumber] = [siteOf(state), state.opened?.title ?? job, state.opened?.ownNumber];
  const lines: readonly LabelledText[] = [
    ...(site === undefined ? [] : [{ label: say("label.site"), text: site }]),
    ...(ownNumber === undefined ? [] : [{ label: say("label.number"), text: ownNumber }]),
    ...(last === undefined
      ? []
      : [{ label: say("label.as-of"), text: say("as-of", { when: moment(last.at), number: String(last.entry.number ?? "") }) }]),
  ];
  const curves = lineCurves(source, switches);
  const { drawing, notes } = curveDrawing(curves, { say, sayer, refusal, units });
  const numbers = numbersUsedViews(source, switches, say, sayer);
  return {
    format: 1,
    language,
    paper: settings.paper,
    words: {
      question: say("heading.question"),
      answer: say("heading.answer"),
      figures: say("heading.figures"),
      change: say("change"),
      numbers: say("heading.numbers"),
      cautions: say("heading.cautions"),
      page: say("heading.page"),
      of: say("heading.of"),
    },
    company: { name: settings.name, lines: settings.lines },
    title: {
      document: say("page.document", { job: title }),
      page: say("page.title"),
      job: title,
      ...(ownNumber === undefined ? {} : { ownNumber }),
      lines,
      at: last?.at ?? 0,
    },
    standing: designStanding(designCheck(source, switches), say),
    questions: designQuestionViews(source, switches, { say, sayer, refusal }),
    ...(drawing && { drawing }),
    notes: [...notes, ...(numbers.length === 0 ? [say("numbers.none")] : [])],
    numbers,
    cautions: [
      say("caution.decide"),
      say("caution.wiring"),
      say("caution.float"),
      say("caution.dig"),
      say("caution.stone"),
      say("caution.doubt"),
    ],
  };
}
