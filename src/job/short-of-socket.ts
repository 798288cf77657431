import { insertion } from "../plumbing/index.ts";
import { type Context, type Evaluation, instancesOf, lacking, plain, readAll } from "./evaluation.ts";

/**
 * How much a pipe is short of the bottom of its socket, metres, from a witness mark that was drawn the measured depth and 2 in from
 * the pipe's end. A mark farther off than that cannot be: it is taken again.
 */
export function shortOfSocket(context: Context): Evaluation {
  const { items, minus = [] } = context.check;
  const ids = [...items, ...minus];
  const readings = readAll(context, ids);
  const found = plain(context, ids, readings, (points) => {
    const [mark, depth] = ids.map((id) => points.get(id));
    const joint = mark && depth ? insertion(depth, mark) : undefined;
    return joint?.ok ? joint.value.short : undefined;
  });
  return found.state === "lacking" && found.missing.length === 0 ? lacking(instancesOf(context, items), found.entries) : found;
}
