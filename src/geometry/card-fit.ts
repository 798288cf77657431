import { BOWS, type CardFrame, homographyOf, LENS, type ModelCorner, type Pose, poseOf, SPREADS, seenAt } from "./card-model.ts";
import { type Matrix, solve } from "./cholesky.ts";
import { homographyFrom, type Spot } from "./homography.ts";
import { leastSquares } from "./least-squares.ts";

/** A corner of the card and where it was seen, in the units of `CardFrame`; `u` along each axis. */
export interface CornerSeen {
  readonly name: string;
  readonly code: string;
  readonly model: ModelCorner;
  readonly seen: Spot;
  readonly u: number;
}

interface Prior {
  readonly value: number;
  readonly u: number;
}
/** What is known before the photo is looked at; what the corners do not tell stays as doubtful as this. */
export interface Priors {
  readonly lens: Prior;
  readonly bow: Prior;
  readonly spread: Prior;
}

/** Numbers of the model that have a prior, in the order of the last residuals. */
export const supposed = [LENS, ...BOWS, ...SPREADS] as const;
export const kindOf = (index: (typeof supposed)[number]): keyof Priors =>
  index === LENS ? "lens" : index === SPREADS[0] || index === SPREADS[1] ? "spread" : "bow";
export const priorOf = (priors: Priors, index: (typeof supposed)[number]): Prior => priors[kindOf(index)];

export interface FittedCard {
  readonly model: readonly number[];
  /** Residuals over their doubts: x and y of every corner in turn, then what is supposed. */
  readonly residuals: readonly number[];
  readonly slopes: Matrix;
  readonly factor: Matrix;
  readonly chiSquare: number;
  readonly degreesOfFreedom: number;
  /** What every doubt of the fit is multiplied by: above 1 where the corners scatter more than their own doubts. */
  readonly widened: number;
  readonly pose: Pose;
  readonly lensU: number;
}

/**
 * All numbers of the model at once by least squares: homography, the lens' distortion, the sheet's bow and the spread of the
 * ink, the last three kinds held by what is supposed of them. So each is told from the photo where the corners carry it, and
 * enters the doubt with its bound where they do not.
 */
export function fitCard(corners: readonly CornerSeen[], priors: Priors, { focal }: Pick<CardFrame, "focal">): FittedCard | undefined {
  const first = homographyFrom(corners.map(({ model, seen }) => ({ from: model.at, to: seen })));
  if (!first.ok) return undefined;
  const start = [...first.value.slice(0, 8), ...supposed.map((index) => priorOf(priors, index).value)];
  const settled = leastSquares(start, (model) => {
    const { up } = poseOf(homographyOf(model), focal);
    return [
      ...corners.flatMap(({ model: corner, seen, u }) => {
        const at = seenAt(model, up, corner);
        return [(at.x - seen.x) / u, (at.y - seen.y) / u];
      }),
      ...supposed.map((index) => {
        const { value, u } = priorOf(priors, index);
        return ((model[index] as number) - value) / u;
      }),
    ];
  });
  if (settled === undefined) return undefined;
  const { at: model, residuals, slopes, factor } = settled;
  const chiSquare = residuals.reduce((sum, r) => sum + r * r, 0);
  const degreesOfFreedom = 2 * corners.length - 8;
  const widened = degreesOfFreedom > 0 ? Math.sqrt(Math.max(1, chiSquare / degreesOfFreedom)) : 1;
  const unit = model.map((_, i) => (i === LENS ? 1 : 0));
  const lensU = widened * Math.sqrt(solve(factor, unit)[LENS] as number);
  return { model, residuals, slopes, factor, chiSquare, degreesOfFreedom, widened, pose: poseOf(homographyOf(model), focal), lensU };
}
