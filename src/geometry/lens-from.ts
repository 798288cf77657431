import { type Outcome, ok, refuse } from "../outcome/index.ts";
import type { CardPlane } from "./card-plane.ts";
import type { Lens } from "./card-shape.ts";

/**
 * A phone's lens from a handful of photos of a card, best with the card large and off the middle: the mean of what each photo
 * tells of the distortion, weighted by how surely, without what was supposed before. The half-width is that of k = 2, widened
 * where the photos scatter more than their doubts. Refuses fewer than three photos with a flat card, and photos that tell nothing.
 */
export function lensFrom(planes: readonly CardPlane[]): Outcome<Lens> {
  const told = planes
    .filter(({ flat }) => flat)
    .flatMap(({ distortion, priors }) => {
      const [all, before] = [1 / (distortion.u * distortion.u), 1e-12 / (priors.lens.u * priors.lens.u)];
      // what the photo alone says: its weight is what it added to what was supposed
      const weight = all - before;
      if (!(weight > 0) || !Number.isFinite(weight)) return [];
      return [{ weight, value: (all * distortion.value - before * 1e6 * priors.lens.value) / weight }];
    });
  if (told.length < 3) return refuse("points-too-few", "photos", { least: 3 });
  const weights = told.reduce((sum, { weight }) => sum + weight, 0);
  const mean = told.reduce((sum, { weight, value }) => sum + weight * value, 0) / weights;
  const scatter = told.reduce((sum, { weight, value }) => sum + weight * (value - mean) * (value - mean), 0) / (told.length - 1);
  const u = Math.sqrt(Math.max(1, scatter) / weights);
  return ok({ distortion: Math.round(mean), within: Math.max(1, Math.ceil(2 * u)) });
}
