import { certain } from "../doubt/index.ts";
import type { Refusal } from "../outcome/index.ts";
import { fixedPerSi } from "../units/index.ts";
import type { PlacedPoint, PlaceOnPlan } from "./design/index.ts";
import { type Context, disagree, type Evaluation, instancesOf, lacking, readAll } from "./evaluation.ts";
import { type Message, message } from "./finding.ts";
import type { Live } from "./live.ts";
import { type SitePlaced, sitePlaced } from "./site-placed.ts";
import { isMarkSaid, keyOfTies, type TiedThing } from "./tied-things.ts";

const perMetre = fixedPerSi("length");
const LEAST_TIES = 2;

/** What a refusal of its distances comes to, as a sentence of the finding. */
function refused({ code, figures }: Refusal): Message {
  switch (code) {
    case "ties-cannot-meet":
      return message("ties.cannot-meet", figures);
    case "ties-side-missing":
      return message("ties.side-missing", figures);
    case "ties-in-line":
      return message("ties.in-line");
    case "ties-too-few":
    case "ties-mark-unknown":
      return message("ties.mark-apart");
    default:
      return message("ties.not-settled");
  }
}

/** What makes a place less good than its ellipse says, the worst first. */
function concernOf({ concerns, crossing, residuals }: PlacedPoint): Message | undefined {
  if (concerns.includes("ties disagree")) return message("ties.disagree", { off: Math.max(...residuals.map(({ off }) => Math.abs(off))) });
  if (concerns.includes("side differs")) return message("ties.side-differs");
  if (concerns.includes("mirrors overlap")) return message("ties.mirrors-overlap");
  if (!concerns.includes("poor crossing")) return undefined;
  return message("ties.poor-crossing", { first: crossing.first, second: crossing.second, angle: String(crossing.degrees) });
}

/** Half the larger axis of the ellipse that holds it in 95 cases of 100. */
const placed = ({ ellipse }: PlaceOnPlan, entries: readonly Live[], unsettled?: Message): Evaluation => ({
  state: "value",
  value: certain(ellipse.major / perMetre),
  entries,
  ...(unsettled ? { unsettled } : {}),
});

function markFound({ plan, left }: SitePlaced, name: string, entries: readonly Live[]): Evaluation {
  const out = left.find(({ mark }) => mark === name);
  if (out) return { state: "does not count", says: refused(out.refusal), entries };
  const at = plan?.marks.findIndex((mark) => mark.name === name) ?? -1;
  const mark = plan?.marks[at];
  if (mark === undefined) return { state: "does not count", says: message("ties.no-distances"), entries };
  if (at < LEAST_TIES) return { state: "answered", met: true, entries };
  const concerns = plan?.concerns.find((one) => one.mark === name)?.concerns ?? [];
  const unsettled = concerns.includes("ties disagree") ? disagree : concerns.length > 0 ? message("ties.mark-poor") : undefined;
  return placed(mark, entries, unsettled);
}

function pointFound({ plan, refusal }: SitePlaced, { key, ties }: TiedThing, entries: readonly Live[]): Evaluation {
  const says = (of: Message): Evaluation => ({ state: "does not count", says: of, entries });
  if (plan === undefined) return says(refusal ? refused(refusal) : message("ties.no-distances"));
  const point = plan.points.find(({ name }) => name === key);
  if (point === undefined) return says(message("ties.not-settled"));
  if (point.state === "refused") return says(refused(point.refusal));
  if (point.state === "mirrored") return says(message("ties.side-missing", { first: point.ask.from, second: point.ask.to }));
  return placed(point, entries, ties.some((tie) => tie.disagree) ? disagree : concernOf(point));
}

/**
 * How near a tied point is found again from its marks, metres: half the larger axis of its ellipse. A mark that others are placed from
 * has none. Two places that fit are asked about, never chosen from; distances that cannot meet say by how much they miss.
 */
export function foundByTies(context: Context): Evaluation {
  const { check, state, tag } = context;
  const instances = instancesOf(context, check.items);
  const key = keyOfTies(
    instances.map(({ item }) => item),
    tag,
  );
  const site = sitePlaced(state, "all");
  const readings = readAll(context, check.items);
  const entries = [...readings.values()].flat().map(({ fact }) => fact);
  const isOwn = (thing: TiedThing | undefined): boolean => thing?.key === key;
  const set = instances[0]?.item.tags;
  const mark = site.marks.find((one) => isOwn(one.tied) || (one.tag !== undefined && one.tag.set === set && one.tag.tag === tag));
  if (mark !== undefined && (site.plan?.marks.some(({ name }) => name === mark.name) || entries.length > 0))
    return markFound(site, mark.name, entries);
  const open = instances.filter(({ item }) => (readings.get(item.id) ?? []).length === 0);
  const missing = LEAST_TIES - (instances.length - open.length);
  if (missing > 0) return lacking(open.slice(0, missing), entries);
  const point = site.points.find(isOwn);
  if (point === undefined || !entries.every(isMarkSaid)) return { state: "does not count", says: message("ties.mark-unsaid"), entries };
  return pointFound(site, point, entries);
}
