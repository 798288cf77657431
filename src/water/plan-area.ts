import { faultIn, product, refused, scale, type Uncertain } from "../doubt/index.ts";
import { type Outcome, ok } from "../outcome/index.ts";

/** A plan as it is measured. Metres. */
export type Plan =
  | { readonly kind: "rectangle"; readonly length: Uncertain; readonly width: Uncertain }
  | { readonly kind: "round"; readonly diameter: Uncertain };

/** Area in plan, m²: length × width, or π/4 × diameter². Refuses sizes that are not above zero. */
export function planArea(plan: Plan): Outcome<Uncertain> {
  const fault =
    plan.kind === "rectangle"
      ? faultIn("plan", { length: [plan.length, "positive"], width: [plan.width, "positive"] })
      : faultIn("plan", { diameter: [plan.diameter, "positive"] });
  if (fault) return refused(fault);
  return ok(plan.kind === "rectangle" ? product(plan.length, plan.width) : scale(product(plan.diameter, plan.diameter), Math.PI / 4));
}
