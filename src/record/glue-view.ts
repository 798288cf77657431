import { type Check, cureClockOf, type Finding, type Item, type Live, type SessionTyped } from "../job/index.ts";
import type { Context } from "./context.ts";
import { typedText } from "./corrections-view.ts";
import { designOf } from "./designed.ts";
import { figureText } from "./equipment-view.ts";
import type { GlueSessionView } from "./model-drawn.ts";
import { type SayArithmetic, sayArithmetic } from "./say-arithmetic.ts";
import { tagName } from "./tag-name.ts";

/** A check that waits for glue to cure. */
const isCure = ({ function: named, lower }: Check): boolean =>
  named === "time passed since" && typeof lower === "object" && lower.function === "cure time";

/** The finding of the same session's set time. */
const setOf = ({ sheet, findings }: Context, { tag }: Finding): Finding | undefined =>
  findings.find((finding) => {
    const lower = finding.of === "check" && finding.tag === tag ? sheet.checks.find(({ id }) => id === finding.check)?.lower : undefined;
    return typeof lower === "object" && lower.function === "set time";
  });

/** What was last entered of an item for a tag and counts. */
function lastOf({ state, beforeRework }: Context, item: string | undefined, tag: string | undefined): Live | undefined {
  const entered = item === undefined ? [] : (state.byItem.get(item) ?? []);
  return entered.findLast(
    (fact) => (fact.kind === "reading-taken" || fact.kind === "answered") && fact.what.tag === tag && !beforeRework.has(fact.id),
  );
}

const jointKinds = ["rigid PVC", "flexible PVC", "ABS to PVC transition"] as const;

/** The can's own time, which is not repeated with the sessions or is. */
const canOf = (context: Context, item: string | undefined, tag: string | undefined): Live | undefined =>
  lastOf(context, item, tag) ?? lastOf(context, item, undefined);

interface Session {
  readonly finding: Finding;
  readonly check: Check;
  readonly items: readonly Item[];
  readonly say: SayArithmetic;
}

function pipeOf(context: Context, { finding: { tag }, items }: Session): string {
  const { kitCards } = context.state;
  const stated = (key: string) => designOf(context).figures[key] ?? kitCards.find(({ facts }) => Object.hasOwn(facts, key))?.facts[key];
  const figures = ["pipeSize", "pipeKind"].flatMap((key) => {
    const figure = stated(key);
    return figure === undefined ? [] : [figureText(context, figure)];
  });
  const glued = items.flatMap((item) => {
    const choice = item.choices?.find(({ id }) => id === lastOf(context, item.id, tag)?.what.choice);
    return choice?.means?.some((meaning) => (jointKinds as readonly string[]).includes(meaning)) ? [context.sayer.words(choice.title)] : [];
  });
  return [...figures, ...(stated("pipeKind") === undefined ? glued : [])].join(", ");
}

function coldestOf(context: Context, { finding: { tag }, items }: Session): Live | undefined {
  const thermometer = items.find(({ quantity }) => quantity === "temperature");
  return thermometer && lastOf(context, thermometer.id, tag);
}

/** By which times a session is set and cured, and when. */
function clockOf(context: Context, session: Session, lastJoint: number): Pick<GlueSessionView, "setUntil" | "cureUntil" | "by"> {
  const { finding, check, items, say } = session;
  const { sayer, state } = context;
  const item = typeof check.lower === "object" ? check.lower.item : undefined;
  const cureUntil = finding.from === undefined ? say("cure.not-known") : sayer.moment(finding.from);
  const set = setOf(context, finding)?.from;
  if (canOf(context, item, finding.tag)) {
    const isOwn = set !== undefined && set !== finding.from;
    return { setUntil: isOwn ? sayer.moment(set) : say("cure.no-set"), cureUntil, by: say("cure.can") };
  }
  const means = items.flatMap(
    ({ id, choices = [] }) => choices.find((c) => c.id === lastOf(context, id, finding.tag)?.what.choice)?.means ?? [],
  );
  const kind = jointKinds.find((one) => means.includes(one));
  const cold = coldestOf(context, session);
  const typed: SessionTyped = {
    ...(kind && { kind }),
    ...(cold && { coldest: { typed: String(cold.what.typed), unit: String(cold.what.unit) } }),
    ...(means.includes("dry air") && { humidity: "dry" as const }),
    ...(context.sheet.cureTable && { table: context.sheet.cureTable }),
  };
  const clock = cureClockOf({ design: designOf(context), kitCards: state.kitCards }, typed, lastJoint);
  if (!clock.ok || clock.value.basis.kind === "can") return { setUntil: say("cure.not-known"), cureUntil, by: say("cure.not-known") };
  const by = say(`cure.table-${clock.value.basis.table}`);
  return { setUntil: sayer.moment(set ?? clock.value.setFrom), cureUntil, by: clock.value.humid ? say("cure.humid", { by }) : by };
}

/** The glue sessions: what was glued and how cold it was, until when it sets and cures and by which times, and when it was dry. */
export function glueSessionViews(context: Context): readonly GlueSessionView[] {
  const { sheet, state, findings, sayer, language } = context;
  const say = sayArithmetic(language);
  return findings.flatMap((finding) => {
    const check = finding.of === "check" ? sheet.checks.find(({ id }) => id === finding.check) : undefined;
    if (check === undefined || !isCure(check)) return [];
    const last = lastOf(context, check.items[0], finding.tag);
    const at = Date.parse(String(last?.what.typed));
    if (last === undefined || Number.isNaN(at)) return [];
    const named = typeof check.lower === "object" ? (check.lower.items ?? []) : [];
    const session: Session = { finding, check, say, items: sheet.items.filter(({ id }) => named.includes(id)) };
    const cold = coldestOf(context, session);
    const dry = lastOf(context, check.until, finding.tag);
    const tag = state.tags.find(
      (t) => t.tag === finding.tag && sheet.items.some((item) => item.id === check.items[0] && item.tags === t.set),
    );
    return [
      {
        session: tag?.description === undefined ? sayer.titleOf(finding) : tagName(context, tag),
        pipe: pipeOf(context, session),
        coldest: cold === undefined ? say("cure.not-read") : typedText(context, cold.what, false),
        lastJoint: sayer.moment(at),
        ...clockOf(context, session, at),
        dryAt: dry === undefined ? say("cure.not-read") : sayer.moment(dry.at),
      },
    ];
  });
}
