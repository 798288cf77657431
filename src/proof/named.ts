import type { Finding } from "../job/index.ts";
import type { Refusal } from "../outcome/index.ts";
import type { RecordModel } from "../record/index.ts";
import type { RecordCheck } from "./check-result.ts";

interface Shown {
  readonly title: string;
  /** A reading as it was typed. */
  readonly typed?: string;
}

/** How the record prints an entry: readings and pictures have a title, most other entries a text. */
function shownOf(model: RecordModel, number: number): Shown | undefined {
  const readings = model.steps.flatMap((step) => step.readings);
  const pictures = [...model.steps.flatMap((step) => step.pictures), ...model.paperPictures];
  const other = model.others.find((one) => one.number === number);
  return (
    readings.find((one) => one.number === number) ??
    pictures.find((one) => one.number === number) ??
    (other === undefined ? undefined : { title: other.text })
  );
}

/** The entry that a fault is about: its number, and its title in the record or else its kind. */
export function entryName({ model, ledger }: RecordCheck, { place }: Refusal): (Partial<Shown> & { readonly number: number }) | undefined {
  const index = /^entries\/(\d+)/.exec(place)?.[1];
  if (index === undefined) return undefined;
  const number = Number(index) + 1;
  const shown = model === undefined ? undefined : shownOf(model, number);
  const title = shown?.title ?? ledger?.entries[number - 1]?.envelope.kind;
  return { number, ...(title === undefined ? {} : { title }), ...(shown?.typed === undefined ? {} : { typed: shown.typed }) };
}

export const idsOf = ({ step, check, tag }: Pick<Finding, "step" | "check" | "tag">): string =>
  [step, check, tag].filter((part) => part !== undefined).join(" / ");

/** A finding, or its ids, by the title under which the record prints it. */
export function findingName(model: RecordModel | undefined, finding: Pick<Finding, "step" | "check" | "tag"> | string): string {
  const ids = typeof finding === "string" ? finding : idsOf(finding);
  const view = model?.findings.find((one) => idsOf(one) === ids);
  return view === undefined ? ids : [view.title, view.tag].filter((part) => part !== undefined).join(" · ");
}
