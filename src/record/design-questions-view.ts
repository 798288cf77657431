import {
  type DesignLine,
  type DesignQuestion,
  type DesignState,
  type DesignSwitches,
  designCheck,
  type Expectation,
  type ExpectationId,
  expectations,
  type FigureSource,
} from "../job/index.ts";
import type { Refusal } from "../outcome/index.ts";
import type { DesignFigureView, DesignQuestionView } from "./design-page-model.ts";
import type { Tone } from "./model.ts";
import type { DesignSayer } from "./say-design.ts";
import type { SayDesignPage } from "./say-design-page.ts";

/** The figures that each question turns on. */
const figuresOf: Readonly<Record<DesignQuestion, readonly ExpectationId[]>> = {
  flow: ["flow", "pumpHead"],
  velocity: ["velocity"],
  reserve: ["basinUsable", "waterInTransit", "reserveRatio"],
  cord: ["cordNeeded", "cordLeft"],
  float: ["floatsOn", "rainThatFloats"],
  stone: ["stoneOnLid", "lidLoadLeft"],
};

const tones: Readonly<Record<DesignState, Tone>> = {
  enough: "within",
  "not enough": "outside",
  "too close to call": "undecided",
  "not known": "missing",
  "ask the maker": "apart",
  "ask the electrician": "apart",
};

export interface DesignSaying {
  readonly say: SayDesignPage;
  readonly sayer: DesignSayer;
  readonly refusal: (refusal: Refusal) => string;
}

const PER_MILLION = 1e6;

/** '45 gpm ± 3.9 gpm'; a ratio as so many times, its doubt rounded up to the tenth. What is no number stands beside it. */
function valueText({ kind, value, doubt = 0, answer }: Expectation, { say, sayer }: DesignSaying): string {
  const named = answer === undefined ? [] : [sayer.answer(answer)];
  if (value === undefined) return named.join("");
  if (kind !== "ratio") return [sayer.withDoubt(kind, value, doubt), ...named].join("; ");
  const times = (value / PER_MILLION).toFixed(1);
  const most = (Math.ceil((doubt / PER_MILLION) * 10) / 10).toFixed(1);
  return say("figure.times", { value: doubt === 0 ? times : `${times} ± ${most}` });
}

/** Where the doubt comes from, each with its share of the variance; what is less than a hundredth is left out. */
function mostText(of: Expectation, { say, sayer }: DesignSaying): string {
  const names = sayer.expectation(of).contributors;
  const variance = ((of.doubt ?? 0) / 2) ** 2;
  return (of.contributors ?? [])
    .map(({ u }, i) => ({ source: names[i] ?? "", share: variance === 0 ? 0 : Math.round((100 * u * u) / variance) }))
    .filter(({ share }) => share > 0)
    .map(({ source, share }) => say("figure.most", { source, share: String(Math.min(share, 100)) }))
    .join("; ");
}

function figureViews(of: readonly Expectation[], saying: DesignSaying): readonly DesignFigureView[] {
  return of
    .filter(({ value, answer }) => value !== undefined || answer !== undefined)
    .map((one) => ({ title: saying.sayer.title(one.id), value: valueText(one, saying), most: mostText(one, saying) }));
}

/** The answers to the questions before the dig, in their order. */
export function designQuestionViews(source: FigureSource, switches: DesignSwitches, saying: DesignSaying): readonly DesignQuestionView[] {
  const { say, sayer, refusal } = saying;
  const all = new Map(expectations(source, switches).map((one) => [one.id, one]));
  return designCheck(source, switches).map((line, i) => {
    const { id, state, says, advice, needs = [] } = line;
    return {
      number: i + 1,
      question: sayer.question(id),
      state: say.ifThere(`state.${id}.${state}`) ?? sayer.state(state),
      tone: tones[state],
      // the state says it already
      says: says.key === "design.not-known" ? "" : sayer.message(says),
      changes: advice.map(sayer.message),
      missing: needs.length === 0 ? "" : say("missing", { needs: needs.map(sayer.figure).join("; ") }),
      beside: [...(line.refusal ? [refusal(line.refusal)] : []), ...sayer.besides(line)],
      figures: figureViews(
        figuresOf[id].flatMap((one) => all.get(one) ?? []),
        saying,
      ),
    };
  });
}

const standings = ["not enough", "too close to call", "not known", "ask", "enough"] as const;
const standingOf = (state: DesignState): (typeof standings)[number] => (state.startsWith("ask") ? "ask" : (state as "enough"));

/** 'To change: 1, 5. Enough: 2, 3.' */
export function designStanding(lines: readonly Pick<DesignLine, "state">[], say: SayDesignPage): string {
  return standings
    .flatMap((standing) => {
      const numbers = lines.flatMap(({ state }, i) => (standingOf(state) === standing ? [String(i + 1)] : []));
      return numbers.length === 0 ? [] : [say(`standing.${standing}`, { numbers: numbers.join(", ") })];
    })
    .join(" ");
}
