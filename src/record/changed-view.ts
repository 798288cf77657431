import type { Context } from "./context.ts";
import type { ChangedView, FindingView, LabelledText, RecordModel } from "./model.ts";
import { fill } from "./speaking.ts";

type Compared = Pick<RecordModel, "findings" | "coverings" | "steps" | "accepted" | "leftToDo" | "corrections" | "proof" | "edition">;

const keyOf = ({ step, check, tag }: FindingView): string => JSON.stringify([step, check, tag ?? ""]);
const titleOf = ({ title, tag }: FindingView): string => [title, tag].filter((part) => part !== undefined).join(" · ");
const figures = ({ verdictWord, value }: FindingView): string => [verdictWord, value].filter((part) => part !== undefined).join(", ");

/** What is in the later list and was not in the earlier one, by what `said` says of it. */
function added<T>(before: readonly T[], now: readonly T[], said: (one: T) => LabelledText): readonly LabelledText[] {
  const known = new Set(before.map((one) => JSON.stringify(said(one))));
  return now.map(said).filter((one) => !known.has(JSON.stringify(one)));
}

function findingsChanged({ texts }: Context, before: RecordModel, now: Compared, sameWords: boolean): readonly LabelledText[] {
  const [earlier, later] = [before.findings, now.findings].map((list) => new Map(list.map((one) => [keyOf(one), one])));
  const changed = now.findings.flatMap((one): LabelledText[] => {
    const was = earlier?.get(keyOf(one));
    if (was === undefined) return [{ label: titleOf(one), text: fill(texts("changed-new"), { now: figures(one) }) }];
    // in another language or in other units the same is written otherwise: there the verdict itself tells
    if (sameWords ? figures(was) === figures(one) : was.verdict === one.verdict) return [];
    return [{ label: titleOf(one), text: fill(texts("changed-was-now"), { was: figures(was), now: figures(one) }) }];
  });
  const gone = before.findings.filter((one) => later?.has(keyOf(one)) === false);
  return [...changed, ...gone.map((one) => ({ label: titleOf(one), text: fill(texts("changed-gone"), { was: figures(one) }) }))];
}

/** What was said of a covering names people in the words of its own edition: of another one it is never repeated. */
function coveringsChanged({ texts }: Context, before: RecordModel, now: Compared): readonly LabelledText[] {
  const sameEdition = before.edition === now.edition;
  const earlier = new Map(before.coverings.map((one) => [one.title, one]));
  const said = ({ state, clearance }: RecordModel["coverings"][number]): string =>
    [state, clearance].filter((part) => part !== "").join("; ");
  return now.coverings.flatMap((one) => {
    const was = earlier.get(one.title);
    if (was === undefined) return [{ label: one.title, text: fill(texts("changed-new"), { now: said(one) }) }];
    if (!sameEdition) return was.tone === one.tone ? [] : [{ label: one.title, text: said(one) }];
    if (said(was) === said(one)) return [];
    return [{ label: one.title, text: fill(texts("changed-was-now"), { was: said(was), now: said(one) }) }];
  });
}

/** What photos measured beside readings. */
const inPhotos = ({ steps }: Pick<RecordModel, "steps">): readonly LabelledText[] =>
  steps.flatMap(({ readings }) =>
    readings.flatMap(({ title, inPhoto }) => (inPhoto === undefined ? [] : [{ label: title, text: inPhoto }])),
  );

/**
 * What a record says otherwise than the version issued before it: entries that came after, findings, coverings, what photos measured, what
 * was decided, left to do or corrected. Names are not compared, since editions print them differently.
 */
export function changedView(context: Context, before: RecordModel, now: Compared): ChangedView {
  const { texts } = context;
  const sameWords = before.language === context.language;
  const after = now.proof.entries - before.proof.entries;
  const about = (label: string, was: string, is: string): readonly LabelledText[] =>
    was === is ? [] : [{ label, text: fill(texts("changed-was-now"), { was, now: is }) }];
  const entries = fill(texts("changed-entries"), {
    count: String(after),
    from: String(before.proof.entries + 1),
    to: String(now.proof.entries),
  });
  const worded = !sameWords
    ? []
    : [
        ...coveringsChanged(context, before, now),
        ...added(inPhotos(before), inPhotos(now), (one) => one),
        ...added(before.accepted, now.accepted, ({ title, kind }) => ({ label: title, text: kind })),
        ...added(before.leftToDo, now.leftToDo, ({ text, state }) => ({ label: text, text: state })),
        ...added(before.corrections, now.corrections, ({ title, was, became }) => ({
          label: title,
          text: was === "" ? became : fill(texts("changed-was-now"), { was, now: became }),
        })),
      ];
  const lines = [
    ...about(texts("changed-edition"), texts(`edition-${before.edition}`), texts(`edition-${now.edition}`)),
    ...about(texts("changed-rules"), String(before.proof.rules), String(now.proof.rules)),
    ...(sameWords ? about(texts("changed-sheet"), before.proof.sheet, now.proof.sheet) : []),
    ...findingsChanged(context, before, now, sameWords),
    ...worded,
  ];
  return {
    title: fill(texts("changed-since"), { version: String(before.title.version) }),
    says: [
      fill(texts("changed-issued"), { issued: context.sayer.moment(before.title.issuedAt) }),
      after > 0 ? entries : texts("changed-no-entries"),
    ],
    lines,
    ...(lines.length === 0 ? { none: texts("changed-nothing") } : {}),
  };
}
